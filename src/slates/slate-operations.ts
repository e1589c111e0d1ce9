import { z } from 'zod';
import { dayField, idField, listOf } from '../web/api/fields';
import { defineOperation } from '../web/api/operation';
import { buildSecondsMax } from './slate-build.queue';
import {
  assignmentSchema,
  buildSchema,
  proposalSchema,
  publicationPreviewSchema,
  publicationSchema,
  slateSchema,
  slateSummarySchema,
} from './slate-schemas';

const tag = 'Slates';
const slates = '/api/v1/associations/:slug/slates';
const slateParams = z.object({ slug: z.string(), slateId: idField });
const buildParams = slateParams.extend({ buildId: idField });
const versionField = z
  .number()
  .int()
  .optional()
  .describe(
    'Version of the slate that was looked at; with it, a change of somebody else in between is told instead.',
  );

export const listSlates = defineOperation({
  id: 'listSlates',
  method: 'GET',
  path: slates,
  tag,
  summary: 'All slates, the latest dates first',
  response: listOf(slateSummarySchema),
});

export const openSlate = defineOperation({
  id: 'openSlate',
  method: 'POST',
  path: slates,
  tag,
  summary: 'Open a slate; it takes in every game of its dates that no other slate has',
  body: z.object({ name: z.string().min(1).max(80), fromDate: dayField, toDate: dayField }),
  response: z.object({ id: idField, games: z.number().int().min(0) }),
  status: 201,
  errors: ['REQUEST.CONFLICT'],
});

export const readSlate = defineOperation({
  id: 'readSlate',
  method: 'GET',
  path: `${slates}/:slateId`,
  tag,
  summary: 'One slate with its games, crews, cost and what is to mend',
  params: slateParams,
  response: slateSchema,
});

export const startBuild = defineOperation({
  id: 'startBuild',
  method: 'POST',
  path: `${slates}/:slateId/builds`,
  tag,
  summary: 'Ask for crews; a worker takes it from there',
  params: slateParams,
  body: z.object({
    seconds: z
      .number()
      .positive()
      .max(buildSecondsMax)
      .optional()
      .describe('By the number of games unless stated.'),
    seed: z.number().int().min(0).max(2_147_483_647).optional(),
    label: z.string().max(80).optional(),
  }),
  response: z.object({ buildId: idField }),
  status: 202,
});

export const listBuilds = defineOperation({
  id: 'listBuilds',
  method: 'GET',
  path: `${slates}/:slateId/builds`,
  tag,
  summary: 'Builds of a slate, the latest first',
  params: slateParams,
  response: listOf(buildSchema),
});

export const readBuild = defineOperation({
  id: 'readBuild',
  method: 'GET',
  path: `${slates}/:slateId/builds/:buildId`,
  tag,
  summary: 'How a build goes on',
  params: buildParams,
  response: buildSchema,
});

export const stopBuild = defineOperation({
  id: 'stopBuild',
  method: 'POST',
  path: `${slates}/:slateId/builds/:buildId/stop`,
  tag,
  summary: 'End a build soon and keep the best slate so far',
  params: buildParams,
  response: z.object({ stopped: z.boolean().describe('False when it was over already.') }),
});

export const listProposals = defineOperation({
  id: 'listProposals',
  method: 'GET',
  path: `${slates}/:slateId/proposals`,
  tag,
  summary: 'What the builds of a slate came to, the latest first',
  params: slateParams,
  response: listOf(proposalSchema),
});

export const chooseProposal = defineOperation({
  id: 'chooseProposal',
  method: 'PUT',
  path: `${slates}/:slateId/chosen-proposal`,
  tag,
  summary: 'Take a proposal into the slate; nobody is told anything by it',
  params: slateParams,
  body: z.object({ proposalId: idField, version: versionField }),
  response: z.object({
    version: z.number().int(),
    seatsChanged: z.number().int().min(0),
    gamesSince: z
      .array(z.string())
      .describe('Numbers of games that came or moved after the proposal was made.'),
  }),
  errors: ['REQUEST.CONFLICT'],
});

export const previewPublication = defineOperation({
  id: 'previewPublication',
  method: 'GET',
  path: `${slates}/:slateId/publication-preview`,
  tag,
  summary: 'What publishing now would tell whom',
  params: slateParams,
  response: publicationPreviewSchema,
});

export const publishSlate = defineOperation({
  id: 'publishSlate',
  method: 'POST',
  path: `${slates}/:slateId/publications`,
  tag,
  summary: 'Tell officials what the slate says, all of it or nothing',
  params: slateParams,
  headers: z.object({
    'idempotency-key': z
      .string()
      .min(8)
      .max(200)
      .describe('Make one for each intention; the same key never publishes twice.'),
  }),
  body: z.object({ version: versionField }),
  response: publicationSchema.nullable().describe('Null when everybody knows already how it stands.'),
  errors: ['REQUEST.CONFLICT'],
});

const official = '/api/v1/associations/:slug/officials/:officialId/assignments';
const officialParams = z.object({ slug: z.string(), officialId: idField });

export const listAssignments = defineOperation({
  id: 'listAssignments',
  method: 'GET',
  path: official,
  tag: 'Assignments',
  summary: 'Coming games of an official',
  params: officialParams,
  response: listOf(assignmentSchema),
});

export const replyToAssignment = defineOperation({
  id: 'replyToAssignment',
  method: 'POST',
  path: `${official}/:assignmentId/reply`,
  tag: 'Assignments',
  summary: 'Accept a game or give it back',
  description:
    'Bound to the game as it was shown: a reply with an older sequence number is refused with a conflict.',
  params: officialParams.extend({ assignmentId: idField }),
  body: z.object({
    sequence: z.number().int().min(0),
    reply: z.enum(['ACCEPTED', 'DECLINED']),
    reason: z.string().max(500).optional(),
  }),
  response: z.object({ reply: z.enum(['ACCEPTED', 'DECLINED']) }),
  errors: ['REQUEST.CONFLICT'],
});
