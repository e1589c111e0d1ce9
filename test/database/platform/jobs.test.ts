// Goal: jobs are sent, worked, tried again and stopped with the application role's rights alone.
// Method: the real queue in a database of this file's own.
import { setTimeout as pause } from 'node:timers/promises';
import { z } from 'zod';
import { schemaPlan } from '../../../src/cli/schema-plan';
import { Jobs } from '../../../src/platform/jobs';
import { createLog } from '../../../src/platform/log';
import { migrate } from '../../../src/platform/migrate';
import { defineQueue } from '../../../src/platform/queues';
import { testDatabase, type TestDatabase } from '../../support/database/test-database';

const payload = z.object({ rows: z.number().int() });
const knit = defineQueue({ name: 'knit', payload, retryLimit: 1, retryDelaySeconds: 1 });
const fold = defineQueue({ name: 'fold', payload, policy: 'short' });
const long = defineQueue({ name: 'long', payload, expireInSeconds: 1, retryLimit: 0 });
const log = createLog({ level: 'silent' });

let database: TestDatabase;
let jobs: Jobs;
beforeAll(async () => {
  database = await testDatabase();
  await migrate(database.ownerUrl, { ...schemaPlan, queues: [knit, fold, long] });
});
beforeEach(async () => {
  jobs = await Jobs.start(database.dataSource, log);
});
afterEach(() => jobs.stop({ timeoutMs: 1000 }));
afterAll(() => database.close());

async function until(condition: () => boolean | Promise<boolean>): Promise<void> {
  const deadline = Date.now() + 10_000;
  while (!(await condition())) {
    if (Date.now() > deadline) throw new Error('It did not happen within 10 s.');
    await pause(25);
  }
}
const stateOf = async (id: string | null) => {
  const { rows } = await database.owner.query<{ state: string }>(
    'select state from pgboss.job where id = $1',
    [id],
  );
  return rows[0]?.state;
};

test('a job reaches its handler with id and payload, and is completed', async () => {
  const seen: { id: string; rows: number }[] = [];
  await jobs.work(knit, async ({ id, data }) => void seen.push({ id, rows: data.rows }));
  const id = await jobs.send(knit, { rows: 3 });
  await until(async () => (await stateOf(id)) === 'completed');
  expect(seen).toEqual([{ id, rows: 3 }]);
});

test('a payload of the wrong form is refused when sent', async () => {
  await expect(jobs.send(knit, { rows: 1.5 })).rejects.toThrow();
});

test('a job sent in a transaction exists exactly when it is committed', async () => {
  let rolledBack: string | null = null;
  await expect(
    database.dataSource.transaction(async (tx) => {
      rolledBack = await jobs.sendInTransaction(tx, fold, { rows: 1 }, { singletonKey: 'a' });
      expect(rolledBack).not.toBeNull();
      throw new Error('no');
    }),
  ).rejects.toThrow('no');
  expect(await stateOf(rolledBack)).toBeUndefined();
  const kept = await database.dataSource.transaction((tx) =>
    jobs.sendInTransaction(tx, fold, { rows: 1 }, { singletonKey: 'a' }),
  );
  expect(await stateOf(kept)).toBe('created');
  // The queue holds one waiting job a key.
  expect(await jobs.send(fold, { rows: 2 }, { singletonKey: 'a' })).toBeNull();
  expect(await jobs.send(fold, { rows: 2 }, { singletonKey: 'b' })).not.toBeNull();
});

test('a job that fails is tried again', async () => {
  let tries = 0;
  await jobs.work(
    knit,
    async () => {
      tries += 1;
      if (tries === 1) throw new Error('dropped a stitch');
    },
    { pollingSeconds: 0.5 },
  );
  const id = await jobs.send(knit, { rows: 1 });
  await until(async () => (await stateOf(id)) === 'completed');
  expect(tries).toBe(2);
}, 15_000);

test('a job does not start before its time', async () => {
  const id = await jobs.send(knit, { rows: 1 }, { startAfter: new Date(Date.now() + 3_600_000) });
  let ran = false;
  await jobs.work(knit, async () => void (ran = true), { pollingSeconds: 0.5 });
  await pause(700);
  expect(ran).toBe(false);
  expect(await stateOf(id)).toBe('created');
});

test('stopping aborts the running job and waits for it', async () => {
  let outcome = 'not started';
  await jobs.work(knit, async ({ signal }) => {
    outcome = 'running';
    await new Promise((resolve) => signal.addEventListener('abort', resolve, { once: true }));
    await pause(50);
    outcome = 'finished in good order';
  });
  const id = await jobs.send(knit, { rows: 1 });
  await until(() => outcome === 'running');
  await jobs.stop();
  expect(outcome).toBe('finished in good order');
  expect(await stateOf(id)).toBe('completed');
});

test('a job is warned before its time is up: it may still end well, and fails when it does not', async () => {
  const ends: string[] = [];
  await jobs.work(long, async ({ data, signal }) => {
    await new Promise((resolve) => signal.addEventListener('abort', resolve, { once: true }));
    if (data.rows === 2) await pause(400);
    ends.push(String(signal.reason));
  });
  const prompt = await jobs.send(long, { rows: 1 });
  await until(async () => (await stateOf(prompt)) === 'completed');
  const dawdling = await jobs.send(long, { rows: 2 });
  await until(async () => (await stateOf(dawdling)) === 'failed');
  await until(() => ends.length === 2);
  expect(ends[0]).toMatch(/nearly used up its 1 s/);
}, 15_000);

test('upkeep of the queue needs no more rights than the application role has', async () => {
  const errors: unknown[] = [];
  const boss = (jobs as unknown as { boss: { maintain(): Promise<void> } }).boss;
  await boss.maintain().catch((error: unknown) => errors.push(error));
  expect(errors).toEqual([]);
});
