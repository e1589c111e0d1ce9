import { z } from 'zod';
import { dayField, idField, instantField, listOf, wallTimeField } from '../web/api/fields';
import { defineOperation } from '../web/api/operation';
import { playingRulesSchema } from './playing-rules';

/** What the API says of games, divisions and teams, and what can be asked about them. */

const named = z.object({ id: idField, code: z.string(), name: z.string() });

export const gameSchema = z.object({
  id: idField,
  number: z.string(),
  status: z.enum(['TENTATIVE', 'CONFIRMED', 'CANCELLED']),
  localDate: dayField,
  localTime: wallTimeField,
  timeZone: z.string(),
  startsAt: instantField,
  durationMinutes: z.number().int(),
  priority: z.number(),
  note: z.string(),
  division: named,
  venue: named.extend({ town: z.string() }),
  court: z.object({ id: idField, name: z.string() }).nullable(),
  home: named,
  away: named,
});

export const divisionSchema = named.extend({
  chiefMinLevel: z.number().int(),
  umpireMinLevel: z.number().int(),
  chiefTargetLevel: z.number().int(),
  umpireTargetLevel: z.number().int(),
  pairingCost: z
    .array(z.number())
    .describe('Cost of a crew by its level gap, from gap 0; the last serves every larger gap.'),
  gameMinutes: z.number().int(),
  priority: z.number(),
  playingRules: playingRulesSchema,
  feeChiefMinorUnits: z.number().int(),
  feeUmpireMinorUnits: z.number().int(),
});

export const teamSchema = named.extend({
  divisionId: idField.nullable(),
  homeColour: z.string(),
  awayColour: z.string(),
  active: z.boolean(),
});

const association = '/api/v1/associations/:slug';

export const listGames = defineOperation({
  id: 'listGames',
  method: 'GET',
  path: `${association}/games`,
  tag: 'Games',
  summary: 'Games of some days, by tip-off',
  query: z.object({
    fromDate: dayField.describe('First local day.'),
    toDate: dayField.describe('Last local day.'),
    divisionId: idField.optional(),
    venueId: idField.optional(),
    teamId: idField.optional(),
    status: gameSchema.shape.status.optional(),
  }),
  response: listOf(gameSchema),
});

export const readGame = defineOperation({
  id: 'readGame',
  method: 'GET',
  path: `${association}/games/:gameId`,
  tag: 'Games',
  summary: 'One game',
  params: z.object({ slug: z.string(), gameId: idField }),
  response: gameSchema,
});

export const listDivisions = defineOperation({
  id: 'listDivisions',
  method: 'GET',
  path: `${association}/divisions`,
  tag: 'Divisions and teams',
  summary: 'Divisions with their levels, pairing costs, playing rules and fees',
  response: listOf(divisionSchema),
});

export const listTeams = defineOperation({
  id: 'listTeams',
  method: 'GET',
  path: `${association}/teams`,
  tag: 'Divisions and teams',
  summary: 'Teams that play, by name',
  query: z.object({ divisionId: idField.optional() }),
  response: listOf(teamSchema),
});
