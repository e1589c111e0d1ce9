import { Body, Controller } from '@nestjs/common';
import { z } from 'zod';
import { Allow } from '../access/allow';
import { CurrentMember, type Member } from '../access/member';
import { defineOperation, Input, Serve, type InputOf, type OutputOf } from '../web/api/operation';
import type { ImportPlan } from './imports/import-plan';
import { ImportsService } from './imports/imports.service';
import { uploadedFiles } from './uploads';

const faultSchema = z.object({
  file: z.string(),
  line: z.number().int(),
  column: z.string().nullable(),
  value: z.string(),
  message: z.string(),
  remedy: z.string(),
});

const importResultSchema = z.object({
  outcome: z
    .enum(['planned', 'stored', 'refused'])
    .describe('Refused: a fault stands, and nothing was stored.'),
  faults: z.array(faultSchema),
  notices: z.array(faultSchema),
  kinds: z.array(
    z.object({
      kind: z.string(),
      added: z.array(z.string()).describe('Keys of the new ones.'),
      changed: z.array(z.object({ key: z.string(), fields: z.array(z.string()) })),
      removed: z.array(z.string()),
      left: z.number().int().describe('Lines that say what is so already.'),
    }),
  ),
});

const bringIn = defineOperation({
  id: 'bringIn',
  method: 'POST',
  path: '/api/v1/associations/:slug/imports',
  tag: 'Lists',
  summary: 'Bring CSV lists in: first a dry run, then for good',
  description:
    'Each file is a part named after its kind: levels, venues, officials, travel-legs, availability, divisions, teams, ' +
    'games or conflicts. All or nothing: while a fault stands, nothing is stored.',
  query: z.object({ dryRun: z.enum(['true', 'false']).default('true') }),
  body: z.record(z.string(), z.unknown()),
  bodyType: 'multipart/form-data',
  response: importResultSchema,
  status: 200,
  errors: ['REQUEST.TOO_LARGE'],
});

/** Bringing lists in, for programs. */
@Controller()
export class ImportsApi {
  constructor(private readonly imports: ImportsService) {}

  @Serve(bringIn)
  @Allow('assignor', 'administrator')
  async bringIn(
    @CurrentMember() { associationId, accountId }: Member,
    @Input() { query }: InputOf<typeof bringIn>,
    @Body() body: unknown,
  ): Promise<OutputOf<typeof bringIn>> {
    const kinds = this.imports.knownKinds().map(({ kind }) => kind.name);
    const files = await uploadedFiles(body, kinds);
    if (query.dryRun === 'true') {
      const plan = await this.imports.plan(associationId, files);
      return { outcome: plan.faults.length > 0 ? 'refused' : 'planned', ...answerOf(plan) };
    }
    const { outcome, plan } = await this.imports.apply(associationId, files, { accountId });
    return { outcome, ...answerOf(plan) };
  }
}

function answerOf(plan: ImportPlan): Omit<z.input<typeof importResultSchema>, 'outcome'> {
  return {
    faults: [...plan.faults],
    notices: [...plan.notices],
    kinds: plan.kinds.map(({ kind, added, changed, removed, left }) => ({
      kind,
      added: added.map(({ key }) => key),
      changed: changed.map(({ key, fields }) => ({ key, fields: fields.map(({ field }) => field) })),
      removed: removed.map(({ key }) => key),
      left,
    })),
  };
}
