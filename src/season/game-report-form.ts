import { z } from 'zod';

const score = z.number().int().min(0).max(500);

/**
 * What a crew reports after a game. Scores come in pairs or not at all; a game that was not played has none.
 * `incidents` are those that stand on the back of the scoresheet or must be reported, without medical detail.
 */
export const gameReportForm = z
  .strictObject({
    played: z.enum(['as-planned', 'changed', 'not-played']),
    homeScore: score.nullable().default(null),
    awayScore: score.nullable().default(null),
    lateStartMinutes: z.number().int().min(0).max(600).default(0),
    incidents: z.string().trim().max(4000).default(''),
    /** Who or what was missing. */
    absent: z.string().trim().max(1000).default(''),
  })
  .refine((report) => (report.homeScore === null) === (report.awayScore === null), {
    error: 'Give both scores or none.',
    path: ['awayScore'],
  })
  .refine((report) => report.played !== 'not-played' || report.homeScore === null, {
    error: 'A game that was not played has no score.',
    path: ['homeScore'],
  });

export type GameReportForm = z.infer<typeof gameReportForm>;
