import { randomBytes } from 'node:crypto';
import { escapeIdentifier, type Client } from 'pg';
import type { DataSource } from 'typeorm';
import { schemaPlan } from '../../../src/cli/schema-plan';
import { entities } from '../../../src/entities';
import { createDataSource } from '../../../src/platform/database';
import { migrate } from '../../../src/platform/migrate';
import { Tenancy } from '../../../src/platform/tenancy';
import { templateVariable } from './test-run';
import {
  alone,
  connected,
  createDatabase,
  dropDatabase,
  joinTestServer,
  type TestServer,
} from './test-server';

/** A database of one test file's own. */
export interface TestDatabase {
  readonly ownerUrl: string;
  readonly appUrl: string;
  /** Acts as the application role, which row-level security binds. */
  readonly dataSource: DataSource;
  readonly tenancy: Tenancy;
  /** Superuser on the same database, for arranging and for looking behind the curtain. */
  readonly owner: Client;
  close(): Promise<void>;
}

const templateLock = 7_203_553;

/** A migrated, empty database, copied from a template that the first caller of the run makes. */
export async function testDatabase(): Promise<TestDatabase> {
  const server = await joinTestServer();
  const template = process.env[templateVariable] ?? '';
  const name = freshName();
  // Copying needs the template to be idle and in one piece; it takes some hundredths of a second.
  await alone(server, templateLock, async () => {
    await ensureTemplate(server, template);
    await createDatabase(server, name, template);
  });
  const owner = await connected(server.ownerUrl(name));
  const dataSource = await createDataSource({
    url: server.appUrl(name),
    entities,
    poolSize: 5,
    applicationName: 'crewloom test',
  }).initialize();
  return {
    ownerUrl: server.ownerUrl(name),
    appUrl: server.appUrl(name),
    dataSource,
    tenancy: new Tenancy(dataSource),
    owner,
    close: async () => {
      if (dataSource.isInitialized) await dataSource.destroy();
      await owner.end();
      if (server.outlivesRun) await dropDatabase(server, name);
      await server.close();
    },
  };
}

/** A database without any table, for testing the way to the first one. */
export async function emptyDatabase(): Promise<Omit<TestDatabase, 'dataSource' | 'tenancy'>> {
  const server = await joinTestServer();
  const name = freshName();
  await createDatabase(server, name);
  const owner = await connected(server.ownerUrl(name));
  return {
    ownerUrl: server.ownerUrl(name),
    appUrl: server.appUrl(name),
    owner,
    close: async () => {
      await owner.end();
      if (server.outlivesRun) await dropDatabase(server, name);
      await server.close();
    },
  };
}

function freshName(): string {
  return `crewloom_test_${randomBytes(6).toString('hex')}`;
}

async function ensureTemplate(server: TestServer, template: string): Promise<void> {
  const { rowCount } = await server.admin.query('select 1 from pg_database where datname = $1', [template]);
  if (rowCount === 1) return;
  // It gets its name only when it is complete, so that a run that dies here leaves no half template behind.
  const draft = `${template}_draft`;
  await dropDatabase(server, draft);
  await createDatabase(server, draft);
  await migrate(server.ownerUrl(draft), schemaPlan);
  await server.admin.query(
    `alter database ${escapeIdentifier(draft)} rename to ${escapeIdentifier(template)}`,
  );
}
