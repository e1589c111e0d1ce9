import { z } from 'zod';
import { dayField, idField, listOf } from '../web/api/fields';
import { defineOperation } from '../web/api/operation';

/** What the API says of officials, and what can be asked about them. */

export const officialSchema = z.object({
  id: idField,
  number: z.string(),
  givenName: z.string(),
  familyName: z.string(),
  level: z.number().int(),
  levelName: z.string(),
  mayBeChief: z.boolean(),
  active: z.boolean(),
  languages: z.array(z.string()),
  limits: z.object({
    maxHomeMinutes: z.number().int(),
    maxGamesPerDay: z.number().int(),
    maxGamesPerSlate: z.number().int(),
    wishedGamesPerSlate: z.number().nullable(),
  }),
  certificateExpiresOn: dayField.nullable(),
  contact: z
    .object({
      email: z.string().nullable(),
      phone: z.string(),
      homeAddress: z.string(),
      birthDate: dayField.nullable(),
      guardianName: z.string(),
      guardianContact: z.string(),
    })
    .nullable()
    .describe('Only for assignors, administrators and the official; null for everybody else.'),
});

const availabilityRuleSchema = z.object({
  id: idField,
  kind: z.enum(['available', 'busy', 'reluctant']),
  localDate: dayField,
  localTime: z.string(),
  durationMinutes: z.number().int(),
  timeZone: z.string(),
  recurrence: z.string().nullable().describe('RFC 5545 recurrence rule; null happens once.'),
  exceptDates: z.array(dayField),
  priority: z.number().int().describe('As in RFC 7953: 1 is strongest, 0 weakest.'),
  source: z.enum(['official', 'assignor', 'import', 'calendar']),
  note: z.string(),
});

const officials = '/api/v1/associations/:slug/officials';
const params = z.object({ slug: z.string(), officialId: idField });
const tag = 'Officials';

export const listOfficials = defineOperation({
  id: 'listOfficials',
  method: 'GET',
  path: officials,
  tag,
  summary: 'Officials, by family name',
  query: z.object({ withInactive: z.enum(['true', 'false']).default('false') }),
  response: listOf(officialSchema),
});

export const readOfficial = defineOperation({
  id: 'readOfficial',
  method: 'GET',
  path: `${officials}/:officialId`,
  tag,
  summary: 'One official',
  params,
  response: officialSchema,
});

export const listAvailability = defineOperation({
  id: 'listAvailability',
  method: 'GET',
  path: `${officials}/:officialId/availability`,
  tag,
  summary: 'When an official is available, busy or would rather not',
  params,
  response: listOf(availabilityRuleSchema),
});
