import type { DataSource } from 'typeorm';
import { assertSchemaCurrent, SchemaMismatchError, type SchemaPlan } from './migrate';
import { zoneDataVersion } from './time-zones';
import { findZoneMismatches, type ZoneMismatch } from './zone-agreement';

/** How the service fares; `down`: it cannot work, `degraded`: it works and somebody should look. */
export interface Health {
  readonly status: 'ok' | 'degraded' | 'down';
  readonly database: { readonly ok: boolean; readonly milliseconds: number | null };
  readonly schema: { readonly ok: boolean; readonly message: string | null };
  readonly queue: {
    readonly waiting: number;
    /** Seconds since the job that has been due for longest became due; 0 when none waits. */
    readonly longestWaitSeconds: number;
    /** Jobs that ended in failure within a day. */
    readonly failed: number;
  } | null;
  readonly zones: {
    /** Release that we compute with. */
    readonly dataVersion: string;
    /** Release inside the JavaScript runtime. */
    readonly runtimeVersion: string | null;
    readonly mismatches: readonly ZoneMismatch[];
  };
}

// A slate takes minutes at most, so a job that has been due for this long has no worker.
const longestWaitSecondsMax = 600;

/**
 * @param options.zones zones of the venues in use
 * @param options.now the present moment
 */
export async function readHealth(
  dataSource: DataSource,
  options: { plan: Pick<SchemaPlan, 'migrations'>; zones: readonly string[]; now: Date },
): Promise<Health> {
  const zones = {
    dataVersion: zoneDataVersion,
    runtimeVersion: process.versions['tz'] ?? null,
    mismatches: [],
  };
  const started = performance.now();
  try {
    await dataSource.query('select 1');
  } catch {
    return {
      status: 'down',
      database: { ok: false, milliseconds: null },
      schema: { ok: false, message: 'The database does not answer.' },
      queue: null,
      zones,
    };
  }
  const milliseconds = Math.round(performance.now() - started);
  const schema = await readSchema(dataSource, options.plan);
  const queue = schema.ok ? await readQueue(dataSource) : null;
  const mismatches = await findZoneMismatches(options.zones, options.now, dataSource);
  const isFine =
    queue !== null && queue.longestWaitSeconds <= longestWaitSecondsMax && mismatches.length === 0;
  return {
    status: !schema.ok ? 'down' : isFine ? 'ok' : 'degraded',
    database: { ok: true, milliseconds },
    schema,
    queue,
    zones: { ...zones, mismatches },
  };
}

async function readSchema(
  dataSource: DataSource,
  plan: Pick<SchemaPlan, 'migrations'>,
): Promise<Health['schema']> {
  try {
    await assertSchemaCurrent(dataSource, plan);
    return { ok: true, message: null };
  } catch (error) {
    if (error instanceof SchemaMismatchError) return { ok: false, message: error.message };
    throw error;
  }
}

async function readQueue(dataSource: DataSource): Promise<NonNullable<Health['queue']>> {
  const [row] = await dataSource.query<NonNullable<Health['queue']>[]>(`
    select count(*) filter (where state < 'active' and start_after <= now())::int as waiting,
           coalesce(extract(epoch from now() - min(start_after)
             filter (where state < 'active' and start_after <= now())), 0)::int as "longestWaitSeconds",
           count(*) filter (where state = 'failed' and completed_on > now() - interval '1 day')::int as failed
      from pgboss.job`);
  if (row === undefined) throw new Error('An aggregate query answered nothing.');
  return row;
}
