// Goal: a build ends in exactly one checked proposal or in a fault that says why, whatever happens to its worker.
// Method: the real queue and the real solver (by steps) on a small association; solvers that wait, lie or die stand in where needed.
import { setTimeout as pause } from 'node:timers/promises';
import { Jobs } from '../../../src/platform/jobs';
import { createLog } from '../../../src/platform/log';
import { withBuildLock } from '../../../src/slates/build-lock';
import { slateServices } from '../../../src/slates/slate-services';
import type { SlateSolver } from '../../../src/slates/slate-solver';
import { readSlateSummaries } from '../../../src/slates/slate-summary.query';
import { slateWorld, stepSolver, type SlateWorld } from './slate-world';

let world: SlateWorld;
const signal = new AbortController().signal;
beforeAll(async () => {
  world = await slateWorld();
  for (const name of ['Ada', 'Cleo', 'Finn']) await world.addOfficial(name);
  for (const name of ['Bea', 'Dora']) await world.addOfficial(name, { level: 2, may_be_chief: false });
});
afterAll(async () => {
  await world.jobs.stop({ timeoutMs: 1000 });
  await world.database.close();
});
afterEach(async () => {
  await world.database.owner.query('truncate pgboss.job');
  await world.database.owner.query(
    'truncate outbox_message, feed_revision, assignment, publication, proposal, build, seat, slate_game, slate, game cascade',
  );
});

async function slateOfThree(): Promise<string> {
  await world.addGame('B1');
  await world.addGame('B2', { starts_at: '2026-11-28T16:00:00Z', local_time: '17:00' });
  await world.addGame('B3', {
    local_date: '2026-11-29',
    starts_at: '2026-11-29T10:00:00Z',
    local_time: '11:00',
  });
  return world.openSlate();
}

async function requested(slateId: string): Promise<string> {
  const outcome = await world.services.requestBuild.request(world.actor, { slateId, seconds: 2 });
  if (outcome.kind !== 'requested') throw new Error(outcome.kind);
  return outcome.buildId;
}

const job = (buildId: string) => ({ associationId: world.associationId, buildId });
const servicesWith = (solver: SlateSolver) =>
  slateServices({ ...world.database, jobs: world.jobs, clock: world.clock, solver });
const summary = async () => {
  const [first] = await world.database.tenancy.read(world.associationId, (tx) =>
    readSlateSummaries(tx, world.associationId),
  );
  if (first === undefined) throw new Error('no slate');
  return first;
};

test('from request to proposal to working copy to publication, through the queue', async () => {
  const slateId = await slateOfThree();
  const buildId = await requested(slateId);
  // A queue of its own: its workers end with it.
  const jobs = await Jobs.start(world.database.dataSource, createLog({ level: 'silent' }));
  const { workers } = slateServices({ ...world.database, jobs, clock: world.clock, solver: stepSolver });
  await workers.start();
  try {
    await until(
      async () => (await world.services.builds.get(world.associationId, buildId))?.state === 'done',
    );
    await until(async () => (await summary()).chosen !== null);
  } finally {
    await workers.stop();
    await jobs.stop();
  }
  const built = await summary();
  expect(built).toMatchObject({
    games: 3,
    seats: { total: 6, filled: 6, open: 0 },
    unpublished: { added: 6 },
  });
  expect(built.chosen).toMatchObject({ openSeats: 0, label: 'Build 1' });
  expect(built.chosen?.bound ?? 0).toBeLessThanOrEqual(built.chosen?.totalCost ?? 0);
  const published = await world.services.publishSlate.publish(world.actor, { slateId, idempotencyKey: 'k' });
  expect(published).toMatchObject({ kind: 'published', changes: { added: 6 } });
  expect(await summary()).toMatchObject({
    published: { number: 1 },
    unpublished: { added: 0 },
    replies: { awaited: 6 },
  });
});

test('a job delivered twice, one after the other, makes one proposal', async () => {
  const buildId = await requested(await slateOfThree());
  await world.services.runBuild.run(job(buildId), signal);
  await world.services.runBuild.run(job(buildId), signal);
  expect(await world.count('proposal')).toBe(1);
});

test('a job delivered to two workers at once makes one proposal, and the second is sent away', async () => {
  const buildId = await requested(await slateOfThree());
  let release = () => undefined as void;
  const held = new Promise<void>((resolve) => (release = resolve));
  const slow = servicesWith({
    solve: async (problem, options) => {
      await held;
      return stepSolver.solve(problem, options);
    },
  });
  const first = slow.runBuild.run(job(buildId), signal);
  await until(
    async () => (await world.services.builds.get(world.associationId, buildId))?.state === 'solving',
  );
  await expect(world.services.runBuild.run(job(buildId), signal)).rejects.toThrow('another worker');
  release();
  await first;
  expect(await world.count('proposal')).toBe(1);
});

test('a build left by a dead worker is found and solved by the next', async () => {
  const buildId = await requested(await slateOfThree());
  await world.database.owner.query('truncate pgboss.job');
  // As a process leaves it that is killed while it solves: its lock is gone with its connection.
  await world.database.owner.query(`update build set state = 'solving', started_at = now() where id = $1`, [
    buildId,
  ]);
  expect(await world.services.workers.requeueLeftBuilds()).toBe(1);
  // One waiting request is as good as two.
  expect(await world.services.workers.requeueLeftBuilds()).toBe(0);
  await world.services.runBuild.run(job(buildId), signal);
  expect(await world.services.builds.get(world.associationId, buildId)).toMatchObject({ state: 'done' });
});

test('a build that somebody is at is not asked for again', async () => {
  const buildId = await requested(await slateOfThree());
  await world.database.owner.query('truncate pgboss.job');
  const requeued = await withBuildLock(world.database.dataSource, buildId, () =>
    world.services.workers.requeueLeftBuilds(),
  );
  expect(requeued).toBe(0);
});

test('a process that stops leaves the build to the next', async () => {
  const buildId = await requested(await slateOfThree());
  const stopping = new AbortController();
  stopping.abort(new Error('stopping'));
  await expect(world.services.runBuild.run(job(buildId), stopping.signal)).rejects.toThrow('stopping');
  expect(await world.count('proposal')).toBe(0);
  await world.services.runBuild.run(job(buildId), signal);
  expect(await world.count('proposal')).toBe(1);
});

test('stopping a build keeps its best, and progress is written meanwhile', async () => {
  const buildId = await requested(await slateOfThree());
  const untilStopped = servicesWith({
    solve: async (problem, options) => {
      options.onProgress({ seconds: 0.5, cost: 123, openSeats: 1, bound: null });
      while (!options.signal.aborted) await pause(20);
      return stepSolver.solve(problem, { ...options, signal });
    },
  });
  const running = untilStopped.runBuild.run(job(buildId), signal);
  await until(
    async () => (await world.services.builds.get(world.associationId, buildId))?.progress?.totalCost === 123,
  );
  expect(await world.services.builds.stop(world.actor, buildId)).toBe(true);
  await running;
  expect(await world.services.builds.get(world.associationId, buildId)).toMatchObject({
    state: 'done',
    isStopRequested: true,
  });
  expect(await world.services.builds.stop(world.actor, buildId)).toBe(false);
});

test('an answer that does not pass the independent check is not kept', async () => {
  const buildId = await requested(await slateOfThree());
  const liar = servicesWith({
    solve: async (problem, options) => {
      const answer = await stepSolver.solve(problem, options);
      return { ...answer, cost: { ...answer.cost, total: answer.cost.total - 1 } };
    },
  });
  await liar.runBuild.run(job(buildId), signal);
  const build = await world.services.builds.get(world.associationId, buildId);
  expect(build).toMatchObject({ state: 'failed', proposalId: null });
  expect(build?.fault).toContain('cost.total is stated as');
});

test('a solver that breaks down fails the build once and for all', async () => {
  const buildId = await requested(await slateOfThree());
  const broken = servicesWith({ solve: () => Promise.reject(new Error('out of memory')) });
  await expect(broken.runBuild.run(job(buildId), signal)).rejects.toThrow('out of memory');
  expect(await world.services.builds.get(world.associationId, buildId)).toMatchObject({
    state: 'failed',
    fault: 'The solver broke down: out of memory',
  });
  await world.database.owner.query('truncate pgboss.job');
  expect(await world.services.workers.requeueLeftBuilds()).toBe(0);
});

test('illegal locks fail the build with the rule and the names', async () => {
  const slateId = await slateOfThree();
  const { rows } = await world.database.owner.query<{ game_id: string; id: string }>(
    `select g.id as game_id, o.id from game g, official o
      where g.association_id = $1 and g.number = 'B1' and o.association_id = $1 and o.given_name = 'Bea'`,
    [world.associationId],
  );
  await world.place(rows[0]?.game_id ?? '', 'chief', rows[0]?.id ?? '', true);
  const buildId = await requested(slateId);
  await world.services.runBuild.run(job(buildId), signal);
  const build = await world.services.builds.get(world.associationId, buildId);
  expect(build?.state).toBe('failed');
  expect(build?.fault).toMatch(/Bea Test in game B1: .*\(H1\)/);
});

test('a later proposal waits to be chosen, and is refused when it no longer fits', async () => {
  const slateId = await slateOfThree();
  await world.services.runBuild.run(job(await requested(slateId)), signal);
  const second = await requested(slateId);
  await world.services.runBuild.run(job(second), signal);
  const chosen = (await summary()).chosen;
  expect(chosen?.label).toBe('Build 1');
  const proposalId = (await world.services.builds.get(world.associationId, second))?.proposalId ?? '';
  const choose = (expectedVersion?: number) =>
    world.services.chooseProposal.choose(world.actor, {
      slateId,
      proposalId,
      ...(expectedVersion !== undefined && { expectedVersion }),
    });
  expect(await choose(1)).toMatchObject({ kind: 'changed' });
  expect(await choose()).toMatchObject({ kind: 'chosen', gamesSince: [] });
  // A game moves into the night: everybody is free, so the proposal still fits, and the move is told.
  await world.database.owner.query(
    `update game set starts_at = starts_at + interval '15 minutes' where association_id = $1 and number = 'B3'`,
    [world.associationId],
  );
  expect(await choose()).toMatchObject({ kind: 'chosen', gamesSince: ['B3'] });
  await world.database.owner.query(`delete from availability_rule where association_id = $1`, [
    world.associationId,
  ]);
  const stale = await choose();
  expect(stale.kind).toBe('stale');
});

async function until(condition: () => Promise<boolean>): Promise<void> {
  const deadline = Date.now() + 15_000;
  while (!(await condition())) {
    if (Date.now() > deadline) throw new Error('It did not happen within 15 s.');
    await pause(25);
  }
}
