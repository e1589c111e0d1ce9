import moment from 'moment-timezone';

/** Release of the IANA time zone database that the service computes with, such as `2026f`. */
export const zoneDataVersion: string = moment.tz.dataVersion;

/** Offsets east of Greenwich between two changes of a zone's clocks; of the form [start, end). */
export interface ZonePeriod {
  /** Instant of the change that begins it, milliseconds since 1970; -Infinity for the first. */
  readonly startsAt: number;
  /** Instant of the change that ends it; Infinity for the last. */
  readonly endsAt: number;
  readonly offsetMinutes: number;
  /** Such as `CEST`, or `+11` where the zone has no letters. */
  readonly abbreviation: string;
}

// The names in the database's own zone.tab, one or more for each country: it leaves out abbreviations such as EST, and old names
// such as Asia/Calcutta that are kept only as links.
const knownZones = new Set(moment.tz.countries().flatMap((country) => moment.tz.zonesForCountry(country)));
const periodsByZone = new Map<string, readonly ZonePeriod[]>();

/** Whether the service takes this zone name: Area/City of the IANA database, in its spelling. */
export function isKnownZone(zone: string): boolean {
  return knownZones.has(zone);
}

/** All zone names that the service takes, sorted. */
export function knownZoneNames(): readonly string[] {
  return [...knownZones].sort();
}

/**
 * The zone's periods, oldest first.
 *
 * @throws when the name is unknown; check with `isKnownZone` what comes from outside
 */
export function zonePeriods(zone: string): readonly ZonePeriod[] {
  const cached = periodsByZone.get(zone);
  if (cached !== undefined) return cached;
  const table = isKnownZone(zone) ? moment.tz.zone(zone) : null;
  if (table === null) throw new Error(`"${zone}" is not a time zone such as Europe/Berlin.`);
  const periods = table.untils.map((until, index) => ({
    startsAt: table.untils[index - 1] ?? -Infinity,
    endsAt: until ?? Infinity,
    // The tables count west of Greenwich; local mean time of long ago has fractions of a minute.
    offsetMinutes: 0 - Math.round(table.offsets[index] ?? 0),
    abbreviation: table.abbrs[index] ?? '',
  }));
  periodsByZone.set(zone, periods);
  return periods;
}

/** The period in which an instant lies. */
export function zonePeriodAt(zone: string, instant: number): ZonePeriod {
  const periods = zonePeriods(zone);
  let [low, high] = [0, periods.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (instant < (periods[middle]?.endsAt ?? Infinity)) high = middle;
    else low = middle + 1;
  }
  const period = periods[low];
  if (period === undefined) throw new Error(`Zone ${zone} has no periods.`);
  return period;
}
