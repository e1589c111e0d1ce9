import { z } from 'zod';

/**
 * How a division plays, as far as a crew must know it. Defaults are the FIBA Official Basketball Rules
 * (Art. 8, 9, 18, 29, 40, 41); an association states what differs.
 */
export const playingRulesSchema = z.strictObject({
  periods: z.number().int().min(1).max(10).default(4),
  periodMinutes: z.number().int().min(1).max(30).default(10),
  intervalMinutes: z.number().int().min(0).max(30).default(2),
  halfTimeMinutes: z.number().int().min(0).max(30).default(15),
  overtimeMinutes: z.number().int().min(0).max(10).default(5),
  clock: z.enum(['stopped', 'running']).default('stopped'),
  timeOutsFirstHalf: z.number().int().min(0).max(9).default(2),
  timeOutsSecondHalf: z.number().int().min(0).max(9).default(3),
  teamFoulLimit: z.number().int().min(1).max(20).default(5),
  playerFoulLimit: z.number().int().min(1).max(10).default(5),
  shotClockSeconds: z.number().int().min(0).max(60).default(24),
  threePointLine: z.boolean().default(true),
  ballSize: z.number().int().min(3).max(7).default(7),
  ringHeightCentimetres: z.number().int().min(200).max(305).default(305),
  note: z.string().max(500).default(''),
});

export type PlayingRules = z.infer<typeof playingRulesSchema>;
