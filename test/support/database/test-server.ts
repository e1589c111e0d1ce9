import { Client, escapeIdentifier } from 'pg';
import { asApplicationRole } from '../../../src/platform/database';
import { startEmbeddedPostgres } from '../../../src/platform/embedded-postgres';
import { serverUrlVariable, testFolderVariable } from './test-run';

/** The server of this run. */
export interface TestServer {
  /** Superuser on the maintenance database. */
  readonly admin: Client;
  ownerUrl(database: string): string;
  appUrl(database: string): string;
  /** Databases are dropped one by one only where the server outlives the run. */
  readonly outlivesRun: boolean;
  close(): Promise<void>;
}

/** Joins the server of this run, or starts the built-in one when nobody has yet. */
export async function joinTestServer(): Promise<TestServer> {
  const given = process.env[serverUrlVariable];
  const folder = process.env[testFolderVariable];
  if (given !== undefined) {
    const admin = await connected(given);
    return {
      admin,
      ownerUrl: (database) => inDatabase(given, database),
      appUrl: (database) => asApplicationRole(inDatabase(given, database)),
      outlivesRun: true,
      close: () => admin.end(),
    };
  }
  if (folder === undefined) throw new Error('test/support/database/global-setup.ts has not run.');
  const embedded = await startEmbeddedPostgres({
    dataDirectory: folder,
    preferredPort: 0,
    // The data need not survive a power cut.
    settings: { fsync: 'off', full_page_writes: 'off', synchronous_commit: 'off', max_connections: '200' },
  });
  const admin = await connected(inDatabase(embedded.ownerUrl, 'postgres'));
  return {
    admin,
    ownerUrl: (database) => inDatabase(embedded.ownerUrl, database),
    appUrl: (database) => inDatabase(embedded.appUrl, database),
    outlivesRun: false,
    close: async () => {
      await admin.end();
      await embedded.leave();
    },
  };
}

/** Runs the work while no other test file does work under the same number. */
export async function alone<T>(server: TestServer, lock: number, work: () => Promise<T>): Promise<T> {
  await server.admin.query('select pg_advisory_lock($1)', [lock]);
  try {
    return await work();
  } finally {
    await server.admin.query('select pg_advisory_unlock($1)', [lock]);
  }
}

export async function createDatabase(
  server: TestServer,
  name: string,
  template = 'template0',
): Promise<void> {
  await server.admin.query(
    `create database ${escapeIdentifier(name)} template ${escapeIdentifier(template)} encoding 'UTF8'`,
  );
}

export async function dropDatabase(server: TestServer, name: string): Promise<void> {
  await server.admin.query(`drop database if exists ${escapeIdentifier(name)} with (force)`);
}

export async function connected(url: string): Promise<Client> {
  const client = new Client({ connectionString: url });
  await client.connect();
  return client;
}

function inDatabase(address: string, database: string): string {
  const url = new URL(address);
  url.pathname = `/${database}`;
  return url.toString();
}
