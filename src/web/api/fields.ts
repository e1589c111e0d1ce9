import { z } from 'zod';

/** Fields that many schemas of the API share. */

export const idField = z.uuid();

/** An instant: a `Date` of ours, RFC 3339 in UTC in the answer. */
export const instantField = z
  .union([z.date(), z.string()])
  .transform((value) => (typeof value === 'string' ? value : value.toISOString()))
  .pipe(z.iso.datetime());

/** Calendar day, `YYYY-MM-DD`. */
export const dayField = z.iso.date();

/** `HH:MM` by the clock on the wall of the venue. */
export const wallTimeField = z.string().regex(/^\d\d:\d\d$/);

/** An answer that is one part of a list. */
export function listOf<Item extends z.ZodType>(item: Item) {
  return z.object({ items: z.array(item), total: z.number().int().min(0) });
}
