import { addDays, daysBetween } from '../platform/calendar-day';
import type { AvailabilityRule } from './availability-rule.entity';
import { isPastUntil, recurrenceDates } from './recurrence';
import { resolveLocalTime } from '../platform/local-time';

/** From `from` (inclusive) to `to` (exclusive), milliseconds since 1970. */
export interface TimeWindow {
  readonly from: number;
  readonly to: number;
}

/** When somebody is free. Windows are in order, do not touch each other, and are never empty. */
export interface FreeWindows {
  /** All the time in which they may be asked, the reluctant time included. */
  readonly available: readonly TimeWindow[];
  /** The part of it in which they would rather not be. */
  readonly reluctant: readonly TimeWindow[];
}

/** What `availabilityWindows` needs to know of a rule. */
export type AvailabilityStretch = Pick<
  AvailabilityRule,
  | 'kind'
  | 'localDate'
  | 'localTime'
  | 'durationMinutes'
  | 'timeZone'
  | 'recurrence'
  | 'exceptDates'
  | 'priority'
>;

interface Painted extends TimeWindow {
  readonly strength: number;
  readonly kind: AvailabilityStretch['kind'];
}

const dayMs = 86_400_000;
const rangeDaysMax = 400;
/** Of two rules of the same priority the later in this list wins: who is busy cannot be asked. */
const kindsByCaution: readonly AvailabilityStretch['kind'][] = ['available', 'reluctant', 'busy'];

/**
 * When one official is free, from their rules. Outside every rule they are not. Where rules overlap, the one of stronger
 * priority says what holds (RFC 7953, section 4: 1 is strongest, 9 weak, 0 weakest); at equal priority busy beats reluctant,
 * and reluctant beats available.
 *
 * A stretch is local time: it begins and ends at its wall-clock times whatever the clock does between. Where an end falls into
 * a skipped or repeated hour, free time is taken as short as it can be meant, and busy or reluctant time as long.
 *
 * Windows reach one day beyond the range at both ends, so that a duty that ends after midnight is still seen to be inside.
 *
 * @param range ISO 8601 local dates of `zone`, both inclusive, at most 400 days
 * @throws when a rule's recurrence cannot be read; importing and editing refuse such rules
 */
export function availabilityWindows(
  rules: readonly AvailabilityStretch[],
  range: { readonly fromDate: string; readonly toDate: string },
  zone: string,
): FreeWindows {
  const days = daysBetween(range.fromDate, range.toDate);
  if (!(days >= 0 && days <= rangeDaysMax))
    throw new Error(`${range.fromDate} to ${range.toDate} is no range of at most ${rangeDaysMax} days.`);
  const bounds = {
    from: localInstants(range.fromDate, '00:00', zone).earliest - dayMs,
    to: localInstants(addDays(range.toDate, 1), '00:00', zone).latest + dayMs,
  };
  const painted = rules
    .flatMap((rule) => stretchesOf(rule, range))
    .map((stretch) => ({
      ...stretch,
      from: Math.max(stretch.from, bounds.from),
      to: Math.min(stretch.to, bounds.to),
    }))
    .filter(({ from, to }) => from < to);
  const segments = topmost(painted);
  return {
    available: joined(segments.filter(({ kind }) => kind !== 'busy')),
    reluctant: joined(segments.filter(({ kind }) => kind === 'reluctant')),
  };
}

/** The stretches of one rule that may reach into the range. */
function stretchesOf(
  rule: AvailabilityStretch,
  range: { readonly fromDate: string; readonly toDate: string },
): Painted[] {
  // Zones differ by up to 26 hours, and the windows reach a day further: two days more on both sides are enough.
  const reach = Math.ceil(rule.durationMinutes / 1440) + 3;
  const fromDate = addDays(range.fromDate, -reach);
  const toDate = addDays(range.toDate, 3);
  const dates =
    rule.recurrence === null
      ? [rule.localDate].filter((date) => fromDate <= date && date <= toDate)
      : recurrenceDates(rule.recurrence, rule.localDate, { fromDate, toDate });
  const isOver = rule.recurrence === null ? () => false : isPastUntil(rule.recurrence);
  const strength = rule.priority === 0 ? 0 : 10 - rule.priority;
  return dates.flatMap((localDate) => {
    if (rule.exceptDates.includes(localDate)) return [];
    const start = localInstants(localDate, rule.localTime, rule.timeZone);
    if (isOver({ localDate, localTime: rule.localTime, startsAt: start.earliest })) return [];
    const endLocal = new Date(
      Date.parse(`${localDate}T${rule.localTime.slice(0, 5)}:00Z`) + rule.durationMinutes * 60_000,
    ).toISOString();
    const end = localInstants(endLocal.slice(0, 10), endLocal.slice(11, 16), rule.timeZone);
    const window =
      rule.kind === 'available'
        ? { from: start.latest, to: end.earliest }
        : { from: start.earliest, to: end.latest };
    return [{ ...window, strength, kind: rule.kind }];
  });
}

/** Cuts time at every beginning and end and keeps, for each piece, the kind that prevails there. */
function topmost(painted: readonly Painted[]): Pick<Painted, 'from' | 'to' | 'kind'>[] {
  const rank = (stretch: Painted) => stretch.strength * 10 + kindsByCaution.indexOf(stretch.kind);
  const cuts = [...new Set(painted.flatMap(({ from, to }) => [from, to]))].sort((a, b) => a - b);
  const waiting = [...painted].sort((a, b) => a.from - b.from);
  let active: Painted[] = [];
  const segments: Pick<Painted, 'from' | 'to' | 'kind'>[] = [];
  let next = 0;
  cuts.forEach((from, index) => {
    const to = cuts[index + 1];
    if (to === undefined) return;
    active = active.filter((stretch) => stretch.to > from);
    for (
      let stretch = waiting[next];
      stretch !== undefined && stretch.from === from;
      stretch = waiting[next]
    ) {
      active.push(stretch);
      next += 1;
    }
    const [first, ...others] = active;
    if (first === undefined) return;
    const top = others.reduce((best, stretch) => (rank(stretch) > rank(best) ? stretch : best), first);
    segments.push({ from, to, kind: top.kind });
  });
  return segments;
}

/** Windows that touch become one; they come in order. */
function joined(windows: readonly TimeWindow[]): TimeWindow[] {
  const result: TimeWindow[] = [];
  for (const { from, to } of windows) {
    const last = result.at(-1);
    if (last !== undefined && last.to === from) result[result.length - 1] = { from: last.from, to };
    else result.push({ from, to });
  }
  return result;
}

/** The instants that a local time may mean; in a skipped hour, the moment of the skip. */
function localInstants(date: string, time: string, zone: string): { earliest: number; latest: number } {
  const resolved = resolveLocalTime({ date, time: time.slice(0, 5), zone });
  switch (resolved.kind) {
    case 'instant':
      return { earliest: resolved.instant.getTime(), latest: resolved.instant.getTime() };
    case 'overlap':
      return { earliest: resolved.earlier.instant.getTime(), latest: resolved.later.instant.getTime() };
    case 'gap':
      return { earliest: resolved.changesAt.getTime(), latest: resolved.changesAt.getTime() };
    case 'invalid':
      throw new Error(resolved.faults.map(({ message }) => message).join(' '));
  }
}
