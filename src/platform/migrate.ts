import { Client, DatabaseError } from 'pg';
import PgBoss from 'pg-boss';
import { DataSource, type Logger, type MigrationInterface } from 'typeorm';
import { applicationRole, prepareApplicationRole } from './database-roles';
import type { AnyQueue } from './queues';

/** What the code expects of the schema. */
export interface SchemaPlan {
  /** Oldest first; a merged one is never edited or renamed. */
  readonly migrations: readonly (new () => MigrationInterface)[];
  readonly queues: readonly AnyQueue[];
}

export interface MigrateOptions {
  /** How long to wait for another process that migrates; 60 seconds unless stated. */
  readonly lockTimeoutMs?: number;
  /** Told the name of each migration once it is applied. */
  readonly onProgress?: (step: string) => void;
}

/** The database's schema is not the one that this code was written for. */
export class SchemaMismatchError extends Error {
  constructor(
    readonly kind: 'too old' | 'too new',
    readonly migrationNames: readonly string[],
  ) {
    super(
      kind === 'too old'
        ? `The database lacks ${migrationNames.join(', ')}; run "crewloom migrate".`
        : `The database was migrated by a newer Crewloom (${migrationNames.join(', ')}); install that one.`,
    );
    this.name = 'SchemaMismatchError';
  }
}

const migrationsTable = 'schema_migration';
const jobSchema = 'pgboss';
// Arbitrary, the same in every version of Crewloom.
const migrateLock = 7_203_552;

/**
 * Brings the database to the head of the plan, as its owner: application role, tables, job queues, grants. Running it again
 * changes nothing; of two at once the second waits and then finds nothing to do.
 *
 * @returns names of the migrations applied now, oldest first
 * @throws {SchemaMismatchError} when the database is newer than the plan; nothing is changed then
 * @throws when another process holds the migration lock for longer than `lockTimeoutMs`
 */
export async function migrate(
  ownerUrl: string,
  plan: SchemaPlan,
  options: MigrateOptions = {},
): Promise<string[]> {
  return withMigrationLock(ownerUrl, options, async (client) => {
    refuseNewer(await appliedMigrations(client), plan);
    await prepareApplicationRole(client);
    const dataSource = await migrationSource(ownerUrl, plan).initialize();
    try {
      const applied = await dataSource.runMigrations({ transaction: 'each' });
      for (const { name } of applied) options.onProgress?.(name);
      await createQueues(ownerUrl, plan.queues);
      await grantToApplication(client);
      return applied.map(({ name }) => name);
    } finally {
      await dataSource.destroy();
    }
  });
}

/** Undoes the newest migration; for development and tests. */
export async function undoLastMigration(
  ownerUrl: string,
  plan: SchemaPlan,
  options: MigrateOptions = {},
): Promise<void> {
  await withMigrationLock(ownerUrl, options, async () => {
    const dataSource = await migrationSource(ownerUrl, plan).initialize();
    try {
      await dataSource.undoLastMigration({ transaction: 'all' });
    } finally {
      await dataSource.destroy();
    }
  });
}

/**
 * Refuses to go on with a database that is older or newer than the code; reads only, so the application role will do.
 *
 * @throws {SchemaMismatchError}
 */
export async function assertSchemaCurrent(
  database: { query(sql: string): Promise<unknown> },
  plan: Pick<SchemaPlan, 'migrations'>,
): Promise<void> {
  const applied = await appliedMigrations(database);
  refuseNewer(applied, plan);
  const missing = plan.migrations.map(nameOf).filter((name) => !applied.includes(name));
  if (missing.length > 0) throw new SchemaMismatchError('too old', missing);
}

function refuseNewer(applied: readonly string[], plan: Pick<SchemaPlan, 'migrations'>): void {
  const known = plan.migrations.map(nameOf);
  const unknown = applied.filter((name) => !known.includes(name));
  if (unknown.length > 0) throw new SchemaMismatchError('too new', unknown);
}

function nameOf(migration: new () => MigrationInterface): string {
  return new migration().name ?? migration.name;
}

/** Names of the migrations that the database has seen, oldest first; none in an empty database. */
export async function appliedMigrations(database: {
  query(sql: string): Promise<unknown>;
}): Promise<string[]> {
  try {
    const answer = await database.query(`select name from ${migrationsTable} order by id`);
    // A plain client answers with an object, TypeORM with the rows themselves.
    const rows = (Array.isArray(answer) ? answer : (answer as { rows: unknown[] }).rows) as {
      name: string;
    }[];
    return rows.map(({ name }) => name);
  } catch (error) {
    const tableIsMissing = '42P01';
    if ((error as { code?: string }).code === tableIsMissing) return [];
    throw error;
  }
}

// TypeORM prints a failed migration by itself; we throw, and the caller decides what is printed.
const silentLogger: Logger = {
  logQuery: () => undefined,
  logQueryError: () => undefined,
  logQuerySlow: () => undefined,
  logSchemaBuild: () => undefined,
  logMigration: () => undefined,
  log: () => undefined,
};

function migrationSource(ownerUrl: string, plan: SchemaPlan): DataSource {
  return new DataSource({
    type: 'postgres',
    url: ownerUrl,
    applicationName: 'crewloom migrate',
    migrations: [...plan.migrations],
    migrationsTableName: migrationsTable,
    synchronize: false,
    logger: silentLogger,
    // A migration that waits for a busy table blocks everybody behind it; rather fail and be run again.
    extra: { lock_timeout: 10_000 },
  });
}

async function withMigrationLock<T>(
  ownerUrl: string,
  options: MigrateOptions,
  work: (client: Client) => Promise<T>,
): Promise<T> {
  const client = new Client({ connectionString: ownerUrl, application_name: 'crewloom migrate' });
  await client.connect();
  try {
    const timeoutMs = options.lockTimeoutMs ?? 60_000;
    await client.query(`select set_config('lock_timeout', $1, false)`, [`${timeoutMs}ms`]);
    await client.query('select pg_advisory_lock($1)', [migrateLock]).catch((error: unknown) => {
      const lockNotAvailable = '55P03';
      if (!(error instanceof DatabaseError && error.code === lockNotAvailable)) throw error;
      throw new Error(
        `Another process has been migrating for ${timeoutMs / 1000} s; try again when it is done.`,
      );
    });
    return await work(client);
  } finally {
    // Ending the session gives the lock back.
    await client.end();
  }
}

async function createQueues(ownerUrl: string, queues: readonly AnyQueue[]): Promise<void> {
  const boss = new PgBoss({
    connectionString: ownerUrl,
    application_name: 'crewloom migrate',
    schema: jobSchema,
    migrate: true,
    supervise: false,
    schedule: false,
    max: 1,
  });
  const failures: Error[] = [];
  boss.on('error', (error) => failures.push(error));
  await boss.start();
  try {
    for (const queue of queues) {
      const settings = {
        name: queue.name,
        policy: queue.policy,
        retryLimit: queue.retryLimit,
        retryDelay: queue.retryDelaySeconds,
        retryBackoff: true,
        expireInSeconds: queue.expireInSeconds,
      };
      await boss.createQueue(queue.name, settings);
      await boss.updateQueue(queue.name, settings);
    }
  } finally {
    await boss.stop({ graceful: false });
  }
  if (failures[0] !== undefined) throw failures[0];
}

/** Tables of the features are granted by their own migrations, each as far as it should be. */
async function grantToApplication(owner: Client): Promise<void> {
  await owner.query(`
    grant usage on schema public, ${jobSchema} to ${applicationRole};
    grant select on ${migrationsTable} to ${applicationRole};
    grant select, insert, update, delete on all tables in schema ${jobSchema} to ${applicationRole};
    revoke insert, update, delete on ${jobSchema}.queue from ${applicationRole};
  `);
}
