import { isCalendarDay } from './calendar-day';
import { isKnownZone, zonePeriodAt, zonePeriods } from './time-zones';

/**
 * The one place where a local time becomes an instant, and back. It reads the zone tables that the service carries with it: the
 * runtime's own may be years older than the zone of a venue, and the database's may differ from both.
 */

/** What people write down: a day, a time of day, and where. */
export interface LocalTime {
  /** Calendar day, `YYYY-MM-DD`, year 1970 to 2199. */
  readonly date: string;
  /** `HH:mm`, 00:00 to 23:59. */
  readonly time: string;
  /** IANA zone, Area/City. */
  readonly zone: string;
}

/** One reading of a local time. */
export interface ResolvedInstant {
  readonly instant: Date;
  /** East of Greenwich. */
  readonly offsetMinutes: number;
}

/** What a local time turned out to mean. */
export type LocalTimeResult =
  | ({ readonly kind: 'instant' } & ResolvedInstant)
  /** The clocks skip it; `resumesAt` is the local time they jump to, on `date`. */
  | {
      readonly kind: 'gap';
      readonly changesAt: Date;
      readonly skippedMinutes: number;
      readonly resumesAt: { readonly date: string; readonly time: string };
    }
  /** The clocks show it twice. RFC 5545 section 3.3.5 reads it as the earlier one. */
  | { readonly kind: 'overlap'; readonly earlier: ResolvedInstant; readonly later: ResolvedInstant }
  | { readonly kind: 'invalid'; readonly faults: readonly LocalTimeFault[] };

export interface LocalTimeFault {
  readonly field: keyof LocalTime;
  readonly message: string;
}

/** An instant as the clock on the wall shows it. */
export interface LocalParts {
  readonly date: string;
  /** `HH:mm`, seconds cut off. */
  readonly time: string;
  /** 1 Monday to 7 Sunday (ISO 8601). */
  readonly weekday: number;
  readonly offsetMinutes: number;
  /** Such as `CEST`, or `+11`. */
  readonly abbreviation: string;
}

const minuteMs = 60_000;
// Zones have moved by up to a whole day at once (Samoa, December 2011) and lie up to 14 hours from Greenwich.
const reachMs = 48 * 60 * minuteMs;

/** Finds the instant of a local time; the caller must decide what to do in a gap and in an overlap. */
export function resolveLocalTime(local: LocalTime): LocalTimeResult {
  const wall = wallClock(local);
  if ('faults' in wall) return { kind: 'invalid', faults: wall.faults };
  const periods = zonePeriods(local.zone).filter(
    ({ startsAt, endsAt }) => startsAt < wall.ms + reachMs && endsAt > wall.ms - reachMs,
  );
  const readings = periods.flatMap(({ startsAt, endsAt, offsetMinutes }) => {
    const instant = wall.ms - offsetMinutes * minuteMs;
    return instant >= startsAt && instant < endsAt ? [{ instant: new Date(instant), offsetMinutes }] : [];
  });
  const [earlier, later] = readings;
  if (earlier !== undefined && later !== undefined) return { kind: 'overlap', earlier, later };
  if (earlier !== undefined) return { kind: 'instant', ...earlier };
  for (const [index, after] of periods.entries()) {
    const before = periods[index - 1];
    if (before === undefined) continue;
    const skipsFrom = after.startsAt + before.offsetMinutes * minuteMs;
    const resumes = after.startsAt + after.offsetMinutes * minuteMs;
    if (wall.ms >= skipsFrom && wall.ms < resumes) {
      return {
        kind: 'gap',
        changesAt: new Date(after.startsAt),
        skippedMinutes: (resumes - skipsFrom) / minuteMs,
        resumesAt: { date: isoDate(resumes), time: isoTime(resumes) },
      };
    }
  }
  throw new Error(`Zone table of ${local.zone} has a hole at ${local.date} ${local.time}.`);
}

/** The local time of an instant. @throws when the zone is unknown */
export function localParts(instant: Date, zone: string): LocalParts {
  const { offsetMinutes, abbreviation } = zonePeriodAt(zone, instant.getTime());
  const wall = instant.getTime() + offsetMinutes * minuteMs;
  return {
    date: isoDate(wall),
    time: isoTime(wall),
    weekday: new Date(wall).getUTCDay() || 7,
    offsetMinutes,
    abbreviation,
  };
}

function wallClock(local: LocalTime): { ms: number } | { faults: LocalTimeFault[] } {
  const faults: LocalTimeFault[] = [];
  const year = Number(local.date.slice(0, 4));
  if (!isCalendarDay(local.date)) {
    faults.push({ field: 'date', message: `"${local.date}" is not a day such as 2026-03-01.` });
  } else if (year < 1970 || year > 2199) {
    faults.push({ field: 'date', message: `${local.date} is not between 1970 and 2199.` });
  }
  const time = /^([01]\d|2[0-3]):([0-5]\d)$/.exec(local.time);
  if (time === null)
    faults.push({ field: 'time', message: `"${local.time}" is not a time of day such as 18:30.` });
  if (!isKnownZone(local.zone)) {
    faults.push({ field: 'zone', message: `"${local.zone}" is not a time zone such as Europe/Berlin.` });
  }
  if (faults.length > 0) return { faults };
  const midnight = Date.parse(`${local.date}T00:00:00Z`);
  return { ms: midnight + (Number(time?.[1]) * 60 + Number(time?.[2])) * minuteMs };
}

function isoDate(wallMs: number): string {
  return new Date(wallMs).toISOString().slice(0, 10);
}

function isoTime(wallMs: number): string {
  return new Date(wallMs).toISOString().slice(11, 16);
}
