import { z } from 'zod';
import { dayField, idField, instantField, wallTimeField } from '../web/api/fields';
import { seatNames } from './seat-name';

/** What the API says of slates. */

const whole = z.number().int().min(0);
export const seatField = z.enum(seatNames);
export const replyField = z.enum(['NEEDS-ACTION', 'ACCEPTED', 'DECLINED']);
const changesSchema = z.object({ added: whole, revised: whole, ended: whole });

export const proposalSchema = z.object({
  id: idField,
  label: z.string(),
  status: z.enum(['optimal', 'feasible']),
  totalCost: z.number(),
  bound: z.number().nullable().describe('No legal slate costs less; null when nothing is proven.'),
  openSeats: whole,
  seconds: z.number(),
  createdAt: instantField,
});

export const slateSummarySchema = z.object({
  id: idField,
  name: z.string(),
  fromDate: dayField,
  toDate: dayField,
  version: z.number().int().describe('Of the working copy; send it back with a change.'),
  games: whole,
  cancelledGames: whole,
  seats: z.object({ total: whole, filled: whole, open: whole, keptOpen: whole, locked: whole }),
  replies: z.object({ awaited: whole, accepted: whole, declined: whole }),
  published: z.object({ number: whole, at: instantField, changes: changesSchema }).nullable(),
  unpublished: changesSchema.describe('What publishing would tell now.'),
  chosen: proposalSchema.nullable(),
});

export const officialRefSchema = z.object({
  id: idField,
  number: z.string(),
  name: z.string(),
  level: z.number().int(),
  levelName: z.string(),
});

const teamRefSchema = z.object({ id: idField, code: z.string(), name: z.string(), colour: z.string() });

export const gameCardSchema = z.object({
  id: idField,
  number: z.string(),
  status: z.enum(['TENTATIVE', 'CONFIRMED', 'CANCELLED']),
  localDate: dayField,
  localTime: wallTimeField,
  timeZone: z.string(),
  startsAt: instantField,
  durationMinutes: z.number().int().min(1),
  division: z.object({ id: idField, code: z.string(), name: z.string() }),
  venue: z.object({ id: idField, code: z.string(), name: z.string(), town: z.string() }),
  court: z.object({ id: idField, name: z.string() }).nullable(),
  home: teamRefSchema,
  away: teamRefSchema,
});

const crewSeatSchema = z.object({
  official: officialRefSchema.nullable(),
  locked: z.boolean(),
  told: z
    .object({
      assignmentId: idField,
      official: officialRefSchema,
      sequence: whole,
      reply: replyField,
      repliedAt: instantField.nullable(),
    })
    .nullable()
    .describe(
      'Who has been told that the seat is theirs; differs from `official` until the next publication.',
    ),
  declinedBy: z.array(officialRefSchema),
});

export const slateSchema = slateSummarySchema.extend({
  crews: z.array(z.object({ game: gameCardSchema, chief: crewSeatSchema, umpire: crewSeatSchema })),
  cost: z.record(z.string(), z.number()).describe('Of the working copy, by term, in points.'),
  kilometres: z.number().nullable(),
  bound: z
    .number()
    .nullable()
    .describe('Proven for the crews as they stand; null when they differ from the proposal.'),
  violations: z
    .array(z.string())
    .describe('Hard rules that the working copy breaks; empty when it can be published.'),
  toMend: z.array(
    z.object({
      severity: z.enum(['stops', 'left-out', 'note']),
      code: z.string(),
      message: z.string(),
      link: z.object({ kind: z.enum(['official', 'game', 'venue', 'slate']), id: z.string() }),
    }),
  ),
});

export const buildSchema = z.object({
  id: idField,
  slateId: idField,
  label: z.string(),
  state: z.enum(['waiting', 'solving', 'done', 'failed']),
  seed: z.number().int(),
  secondsLimit: z.number(),
  progress: z
    .object({ seconds: z.number(), totalCost: z.number(), bound: z.number().nullable(), openSeats: whole })
    .nullable(),
  requestedAt: instantField,
  startedAt: instantField.nullable(),
  finishedAt: instantField.nullable(),
  fault: z.string().nullable(),
  proposalId: idField.nullable(),
});

const toldLineSchema = z.object({
  news: z.enum(['asked', 'asked-again', 'released']),
  seat: seatField,
  game: gameCardSchema,
  differences: z.array(z.enum(['time', 'venue', 'seat'])),
  reason: z.enum(['replaced', 'withdrawn', 'game-cancelled']).nullable(),
});

export const publicationPreviewSchema = z.object({
  version: z.number().int(),
  violations: z.array(z.string()),
  unchanged: whole,
  told: z.array(z.object({ official: officialRefSchema, lines: z.array(toldLineSchema) })),
});

export const publicationSchema = z.object({
  publicationId: idField,
  number: z.number().int().min(1),
  changes: changesSchema,
  repeated: z.boolean().describe('True when this very request had been carried out before.'),
});

export const assignmentSchema = z.object({
  id: idField,
  sequence: whole.describe('Send it back with a reply; it changes when the details do.'),
  seat: seatField,
  reply: replyField,
  startsAt: instantField.describe('Tip-off as the official was told.'),
  dutyStartsAt: instantField.describe('When both officials must be on court.'),
  dutyEndsAt: instantField,
  leaveHomeBy: instantField
    .nullable()
    .describe('Null when the way does not start at home, or a position is missing.'),
  partner: officialRefSchema.nullable(),
  game: gameCardSchema,
});
