import { Pool, types } from 'pg';
import { DataSource, type DataSourceOptions } from 'typeorm';
import type { Configuration } from './configuration';
import { applicationRole } from './database-roles';
import { startEmbeddedPostgres } from './embedded-postgres';
import { SnakeNames } from './snake-names';

// A calendar day has no zone: as a JavaScript Date it would shift with the zone of the process, so it stays `YYYY-MM-DD`.
types.setTypeParser(types.builtins.DATE, (value) => value);
// The same for arrays of days: `date[]` is read as `text[]`. The driver has no names for the two.
const [dateArray, textArray] = [1182, 1009];
types.setTypeParser(dateArray, types.getTypeParser(textArray) as (value: string) => string[]);

/** The two addresses of the database, and how to give it up. */
export interface DatabaseAccess {
  /** Role that owns the schema; only for migrating. */
  readonly ownerUrl: string;
  /** Application role; everything else. */
  readonly appUrl: string;
  /** `null`: a server of somebody else's. */
  readonly embeddedPort: number | null;
  release(): Promise<void>;
}

/**
 * Finds the database that the configuration names, or starts the built-in one.
 *
 * @param onProgress told each step of starting the built-in server
 */
export async function openDatabaseAccess(
  configuration: Pick<Configuration, 'databaseUrl' | 'appDatabaseUrl' | 'dataDirectory'>,
  onProgress?: (step: string) => void,
): Promise<DatabaseAccess> {
  const { databaseUrl, appDatabaseUrl, dataDirectory } = configuration;
  if (databaseUrl !== null) {
    return {
      ownerUrl: databaseUrl,
      appUrl: appDatabaseUrl ?? asApplicationRole(databaseUrl),
      embeddedPort: null,
      release: async () => undefined,
    };
  }
  const embedded = await startEmbeddedPostgres({ dataDirectory, ...(onProgress && { onProgress }) });
  return {
    ownerUrl: embedded.ownerUrl,
    appUrl: embedded.appUrl,
    embeddedPort: embedded.port,
    release: async () => {
      await embedded.release();
    },
  };
}

/** The same address, but every session acts as the application role from its first statement. */
export function asApplicationRole(ownerUrl: string): string {
  return withSessionOption(ownerUrl, `-c role=${applicationRole}`);
}

/** Adds a setting to those that the address states for its sessions. */
function withSessionOption(address: string, option: string): string {
  const url = new URL(address);
  const stated = url.searchParams.get('options');
  url.searchParams.set('options', stated === null ? option : `${stated} ${option}`);
  return url.toString().replaceAll('+', '%20');
}

/**
 * TypeORM over the application role's connections. Sessions are in UTC; the schema is never synchronised.
 *
 * @param options.url the application role's address
 * @param options.entities every entity of the features; the platform knows none
 * @param options.poolSize connections at most, 10 unless stated
 * @param options.applicationName shown in `pg_stat_activity`
 */
export function createDataSource(options: {
  url: string;
  entities: Exclude<DataSourceOptions['entities'], undefined>;
  poolSize?: number;
  applicationName?: string;
}): DataSource {
  return new DataSource({
    type: 'postgres',
    url: withSessionOption(options.url, '-c TimeZone=UTC'),
    entities: options.entities,
    namingStrategy: new SnakeNames(),
    synchronize: false,
    migrationsRun: false,
    dropSchema: false,
    logging: false,
    applicationName: options.applicationName ?? 'crewloom',
    poolSize: options.poolSize ?? 10,
    extra: { connectionTimeoutMillis: 10_000 },
  });
}

/** The connections below an initialised TypeORM source, for what needs plain `pg`. */
export function poolOf(dataSource: DataSource): Pool {
  const { master } = dataSource.driver as unknown as { master: unknown };
  if (!(master instanceof Pool)) throw new Error('The data source is not connected to Postgres.');
  return master;
}
