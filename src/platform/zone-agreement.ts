import { addDays } from './calendar-day';
import { zonePeriodAt } from './time-zones';

/** The first week in which somebody else's clock differs from ours. */
export interface ZoneMismatch {
  readonly zone: string;
  /** `runtime`: the one that JavaScript's own date functions use. */
  readonly source: 'runtime' | 'database';
  readonly at: Date;
  readonly ourOffsetMinutes: number;
  /** `null`: that source does not know the zone. */
  readonly theirOffsetMinutes: number | null;
}

interface Queryable {
  query(sql: string, parameters: unknown[]): Promise<unknown>;
}

const weeks = 78;

/**
 * Compares our zone tables with the runtime's and the database's, weekly over the coming 18 months. All three follow the same IANA
 * database, but each in the release it was built with. We compute with ours alone; a difference means that one of them is
 * stale, and that whoever else relies on it will show another time.
 */
export async function findZoneMismatches(
  zones: readonly string[],
  from: Date,
  database: Queryable,
): Promise<ZoneMismatch[]> {
  const firstDay = from.toISOString().slice(0, 10);
  // Noon in Greenwich: clocks change at night nearly everywhere, so that no sample lies on a change.
  const instants = Array.from(
    { length: weeks + 1 },
    (_, n) => new Date(`${addDays(firstDay, n * 7)}T12:00:00Z`),
  );
  const found: ZoneMismatch[] = [];
  for (const zone of zones) {
    const sources = [
      { source: 'runtime' as const, offsets: runtimeOffsets(zone, instants) },
      { source: 'database' as const, offsets: await databaseOffsets(zone, instants, database) },
    ];
    for (const { source, offsets } of sources) {
      for (const [index, at] of instants.entries()) {
        const ourOffsetMinutes = zonePeriodAt(zone, at.getTime()).offsetMinutes;
        const theirOffsetMinutes = offsets?.[index] ?? null;
        if (theirOffsetMinutes !== ourOffsetMinutes) {
          found.push({ zone, source, at, ourOffsetMinutes, theirOffsetMinutes });
          break;
        }
      }
    }
  }
  return found;
}

function runtimeOffsets(zone: string, instants: readonly Date[]): number[] | null {
  try {
    const format = new Intl.DateTimeFormat('en-US', { timeZone: zone, timeZoneName: 'longOffset' });
    return instants.map((instant) => {
      const name = format.formatToParts(instant).find(({ type }) => type === 'timeZoneName')?.value ?? '';
      const match = /^GMT(?:([+-])(\d\d):(\d\d))?$/.exec(name);
      const minutes = Number(match?.[2] ?? 0) * 60 + Number(match?.[3] ?? 0);
      return match?.[1] === '-' ? 0 - minutes : minutes;
    });
  } catch {
    return null;
  }
}

async function databaseOffsets(
  zone: string,
  instants: readonly Date[],
  database: Queryable,
): Promise<number[] | null> {
  try {
    const answer = await database.query(
      `select (extract(epoch from (at at time zone $1) - (at at time zone 'UTC')) / 60)::int as minutes
         from unnest($2::timestamptz[]) with ordinality as sample(at, n) order by n`,
      [zone, instants],
    );
    const rows = (Array.isArray(answer) ? answer : (answer as { rows: unknown[] }).rows) as {
      minutes: number;
    }[];
    return rows.map(({ minutes }) => minutes);
  } catch (error) {
    const { code, driverError } = error as { code?: string; driverError?: { code?: string } };
    const zoneIsUnknown = '22023';
    if ((driverError?.code ?? code) === zoneIsUnknown) return null;
    throw error;
  }
}
