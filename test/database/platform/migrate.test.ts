// Goal: the way from an empty database to the head of the plan, and back, holds whatever comes between.
// Method: small migrations of our own for the mechanics, the real plan for the way up and down.
import type { MigrationInterface, QueryRunner } from 'typeorm';
import { schemaPlan } from '../../../src/cli/schema-plan';
import {
  appliedMigrations,
  assertSchemaCurrent,
  migrate,
  SchemaMismatchError,
  undoLastMigration,
} from '../../../src/platform/migrate';
import { defineQueue } from '../../../src/platform/queues';
import { z } from 'zod';
import { connected } from '../../support/database/test-server';
import { emptyDatabase } from '../../support/database/test-database';

class First1700000000001 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query('create table first (id int primary key); grant select, insert on first to crewloom_app;');
    await db.query('select pg_sleep(0.2)');
  }
  async down(db: QueryRunner): Promise<void> {
    await db.query('drop table first');
  }
}
class Second1700000000002 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query('create table second (id int primary key)');
  }
  async down(db: QueryRunner): Promise<void> {
    await db.query('drop table second');
  }
}
class Broken1700000000003 implements MigrationInterface {
  async up(db: QueryRunner): Promise<void> {
    await db.query('create table third (id int primary key)');
    await db.query('select * from no_such_table');
  }
  async down(): Promise<void> {}
}

const queue = defineQueue({ name: 'knit', payload: z.object({ rows: z.number() }), policy: 'short' });
const plan = { migrations: [First1700000000001, Second1700000000002], queues: [queue] };
const names = ['First1700000000001', 'Second1700000000002'];

let database: Awaited<ReturnType<typeof emptyDatabase>>;
beforeEach(async () => {
  database = await emptyDatabase();
});
afterEach(() => database.close());

async function tables(): Promise<string[]> {
  const { rows } = await database.owner.query<{ name: string }>(
    `select table_name as name from information_schema.tables where table_schema = 'public' order by 1`,
  );
  return rows.map(({ name }) => name);
}

test('goes from empty to head, and a second time changes nothing', async () => {
  const steps: string[] = [];
  expect(await migrate(database.ownerUrl, plan, { onProgress: (step) => steps.push(step) })).toEqual(names);
  expect(steps).toEqual(names);
  expect(await tables()).toEqual(['first', 'schema_migration', 'second']);
  expect(await migrate(database.ownerUrl, plan)).toEqual([]);
  await expect(assertSchemaCurrent(database.owner, plan)).resolves.toBeUndefined();
});

test('two at once: one does the work, the other waits and finds nothing to do', async () => {
  const both = await Promise.all([migrate(database.ownerUrl, plan), migrate(database.ownerUrl, plan)]);
  expect(both.map((applied) => applied.length).sort()).toEqual([0, 2]);
  expect(await appliedMigrations(database.owner)).toEqual(names);
});

test('gives up when another process holds the lock for too long', async () => {
  const slow = migrate(database.ownerUrl, plan);
  await new Promise((resolve) => setTimeout(resolve, 100));
  await expect(migrate(database.ownerUrl, plan, { lockTimeoutMs: 20 })).rejects.toThrow(/Another process/);
  await slow;
});

test('goes down one and up again', async () => {
  await migrate(database.ownerUrl, plan);
  await undoLastMigration(database.ownerUrl, plan);
  expect(await tables()).toEqual(['first', 'schema_migration']);
  expect(await migrate(database.ownerUrl, plan)).toEqual(['Second1700000000002']);
});

test('a migration that fails leaves nothing of itself and keeps those before it', async () => {
  const broken = { ...plan, migrations: [...plan.migrations, Broken1700000000003] };
  await expect(migrate(database.ownerUrl, broken)).rejects.toThrow(/no_such_table/);
  expect(await tables()).toEqual(['first', 'schema_migration', 'second']);
  expect(await appliedMigrations(database.owner)).toEqual(names);
});

test('refuses a database that is older or newer than the code, before touching it', async () => {
  const older = { ...plan, migrations: [First1700000000001] };
  await expect(assertSchemaCurrent(database.owner, plan)).rejects.toMatchObject({
    kind: 'too old',
    migrationNames: names,
  });
  await migrate(database.ownerUrl, older);
  await expect(assertSchemaCurrent(database.owner, plan)).rejects.toMatchObject({
    kind: 'too old',
    migrationNames: ['Second1700000000002'],
  });
  await migrate(database.ownerUrl, plan);
  await expect(assertSchemaCurrent(database.owner, older)).rejects.toBeInstanceOf(SchemaMismatchError);
  await expect(migrate(database.ownerUrl, older)).rejects.toMatchObject({ kind: 'too new' });
});

test('the application role reads the version and uses the queue, and changes neither', async () => {
  await migrate(database.ownerUrl, plan);
  const app = await connected(database.appUrl);
  try {
    await expect(assertSchemaCurrent(app, plan)).resolves.toBeUndefined();
    await app.query('insert into first values (1)');
    const { rows } = await app.query<{ name: string; policy: string }>(
      'select name, policy from pgboss.queue where name = $1',
      ['knit'],
    );
    expect(rows).toEqual([{ name: 'knit', policy: 'short' }]);
    for (const forbidden of [
      'update first set id = 2',
      'select * from second',
      'delete from schema_migration',
      'delete from pgboss.queue',
      'create table mine (id int)',
      'alter table first disable row level security',
    ]) {
      await expect(app.query(forbidden)).rejects.toThrow(/permission denied|must be owner/);
    }
  } finally {
    await app.end();
  }
});

test('an owner without superuser rights can migrate', async () => {
  const { owner, ownerUrl } = database;
  const role = `landlord_${Date.now()}`;
  const url = new URL(ownerUrl);
  await owner.query(`create role ${role} login createrole password 'a b'`);
  await owner.query(`alter database ${url.pathname.slice(1)} owner to ${role}`);
  await owner.query(`grant crewloom_app to ${role} with admin option`);
  url.username = role;
  url.password = 'a b';
  expect(await migrate(url.toString(), plan)).toEqual(names);
  await owner.query(`reassign owned by ${role} to current_user; drop owned by ${role}; drop role ${role}`);
});

test('the real plan goes up, all the way down, and up again', async () => {
  const applied = await migrate(database.ownerUrl, schemaPlan);
  expect(applied).toHaveLength(schemaPlan.migrations.length);
  for (let n = 0; n < applied.length; n += 1) await undoLastMigration(database.ownerUrl, schemaPlan);
  expect(await tables()).toEqual(['schema_migration']);
  expect(await migrate(database.ownerUrl, schemaPlan)).toEqual(applied);
});
