// Goal: health tells what is wrong: no database, another schema, jobs that nobody takes, stale zone tables.
import { schemaPlan } from '../../../src/cli/schema-plan';
import { createDataSource } from '../../../src/platform/database';
import { readHealth } from '../../../src/platform/health';
import { findZoneMismatches } from '../../../src/platform/zone-agreement';
import { zoneDataVersion } from '../../../src/platform/time-zones';
import { testDatabase, type TestDatabase } from '../../support/database/test-database';

const now = new Date('2026-11-25T12:00:00Z');
let database: TestDatabase;
beforeAll(async () => {
  database = await testDatabase();
});
afterAll(() => database.close());

const read = (plan: typeof schemaPlan = schemaPlan) =>
  readHealth(database.dataSource, { plan, zones: ['Europe/Berlin', 'America/New_York'], now });

test('a sound database is ok', async () => {
  const health = await read();
  expect(health).toMatchObject({
    status: 'ok',
    database: { ok: true },
    schema: { ok: true, message: null },
    queue: { waiting: 0, longestWaitSeconds: 0, failed: 0 },
    zones: { dataVersion: zoneDataVersion, mismatches: [] },
  });
  expect(health.zones.runtimeVersion).toMatch(/^20\d\d[a-z]$/);
});

test('a schema that is too old or too new is down, and says so', async () => {
  class Later1999999999999 {
    async up(): Promise<void> {}
    async down(): Promise<void> {}
  }
  const tooOld = await read({ ...schemaPlan, migrations: [...schemaPlan.migrations, Later1999999999999] });
  expect(tooOld).toMatchObject({ status: 'down', queue: null });
  expect(tooOld.schema.message).toContain('Later1999999999999');
  const tooNew = await read({ ...schemaPlan, migrations: schemaPlan.migrations.slice(0, -1) });
  expect(tooNew).toMatchObject({ status: 'down', schema: { ok: false } });
});

test('a job that nobody takes for long degrades it; one of the future does not', async () => {
  const { owner } = database;
  await owner.query(`select pgboss.create_queue('forgotten', '{"policy":"standard"}')`);
  const put = (startAfter: string) =>
    owner.query(`insert into pgboss.job (name, start_after) values ('forgotten', now() + $1::interval)`, [
      startAfter,
    ]);
  await put('1 hour');
  expect(await read()).toMatchObject({ status: 'ok', queue: { waiting: 0 } });
  await put('-20 minutes');
  const health = await read();
  expect(health).toMatchObject({ status: 'degraded', queue: { waiting: 1 } });
  expect(health.queue?.longestWaitSeconds).toBeGreaterThanOrEqual(1200);
});

test('a database that does not answer is down', async () => {
  const away = await createDataSource({ url: database.appUrl, entities: [] }).initialize();
  await away.destroy();
  const health = await readHealth(away, { plan: schemaPlan, zones: [], now });
  expect(health).toMatchObject({ status: 'down', database: { ok: false }, queue: null });
});

test('a source whose clocks differ from ours is named with the first week of it', async () => {
  // Answers as the tables of 2025 do for Vancouver: back to winter time on 1 November 2026.
  const stale = {
    query: async (_sql: string, [, instants]: unknown[]) =>
      (instants as Date[]).map((instant) => ({
        minutes: instant.getTime() < Date.parse('2026-11-01T09:00Z') ? -420 : -480,
      })),
  };
  const found = await findZoneMismatches(['America/Vancouver'], new Date('2026-10-14T00:00Z'), stale);
  expect(found.find(({ source }) => source === 'database')).toEqual({
    zone: 'America/Vancouver',
    source: 'database',
    at: new Date('2026-11-04T12:00:00Z'),
    ourOffsetMinutes: -420,
    theirOffsetMinutes: -480,
  });
});

test('a zone that the database does not know is named without an offset', async () => {
  const unknowing = {
    query: async () => {
      throw Object.assign(new Error('time zone not recognized'), { code: '22023' });
    },
  };
  const found = await findZoneMismatches(['Europe/Berlin'], now, unknowing);
  expect(found).toMatchObject([{ zone: 'Europe/Berlin', source: 'database', theirOffsetMinutes: null }]);
  const broken = { query: () => Promise.reject(new Error('connection lost')) };
  await expect(findZoneMismatches(['Europe/Berlin'], now, broken)).rejects.toThrow('connection lost');
});
