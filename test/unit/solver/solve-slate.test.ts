// Goal: what a caller of the solver may rely on besides a good slate: the same answer again, prompt cancellation,
// progress, refusals, and no surprise from extreme input. Method: generated slates through the door.
import {
  checkAnswer,
  defaultSeconds,
  readProblem,
  solveSlate,
  type SlateAnswer,
  type SlateProblem,
  type SolveOptions,
  type SolveProgress,
} from '../../../src/solver';
import { randomSlate } from '../../support/solver/random-slate';
import { aGame, anOfficial, aProblem } from '../../support/solver/slate-builder';

const stopped = { nowSeconds: () => 0 };
const ticking = { nowSeconds: () => performance.now() / 1000 };

/** Solves and lets the independent checker judge the answer. */
async function solved(problem: SlateProblem, options: SolveOptions): Promise<SlateAnswer> {
  expect(readProblem(problem)).toMatchObject({ ok: true });
  const answer = await solveSlate(problem, options);
  expect(checkAnswer(problem, answer)).toMatchObject({ ok: true });
  return answer;
}

describe('the same seed, step limit and threads', () => {
  const problem = randomSlate({ seed: 11, games: 30, officials: 28 });

  it.each([1, 2])('give the same answer byte for byte, with %d threads', async (threads) => {
    const run = () => solved(problem, { ...stopped, steps: 60_000, seed: 5, threads });
    expect(JSON.stringify(await run())).toBe(JSON.stringify(await run()));
  });

  it('give the same answer when threads share a large slate', async () => {
    const large = randomSlate({ seed: 12, games: 410, officials: 300 });
    const run = () => solved(large, { ...stopped, steps: 80_000, seed: 5, threads: 2 });
    expect(JSON.stringify(await run())).toBe(JSON.stringify(await run()));
  });

  it('and another seed another walk', async () => {
    const walk = (seed: number) => solved(problem, { ...stopped, steps: 4096, seed });
    expect(JSON.stringify((await walk(1)).assignments)).not.toBe(JSON.stringify((await walk(2)).assignments));
  });
});

describe('cancelling', () => {
  const problem = randomSlate({ seed: 13, games: 60, officials: 55 });

  it.each([
    { threads: 1, afterMs: 150 },
    { threads: 2, afterMs: 300 },
  ])(
    'ends a long run at once with the best slate so far ($threads threads)',
    async ({ threads, afterMs }) => {
      const interruption = new AbortController();
      setTimeout(() => interruption.abort(), afterMs);
      const before = performance.now();
      await solved(problem, { ...ticking, seconds: 600, threads, signal: interruption.signal });
      expect(performance.now() - before).toBeLessThan(afterMs + 1000);
    },
  );

  it('before the beginning still gives a legal slate', async () => {
    await solved(problem, { ...ticking, seconds: 600, signal: AbortSignal.abort() });
  });
});

it('tells of progress that never gets worse and ends near its time', async () => {
  const heard: SolveProgress[] = [];
  const problem = randomSlate({ seed: 14, games: 60, officials: 55 });
  const answer = await solved(problem, {
    ...ticking,
    seconds: 1.2,
    onProgress: (progress) => heard.push(progress),
  });
  expect(heard.length).toBeGreaterThan(2);
  heard.reduce((before, now) => {
    expect(now.cost).toBeLessThanOrEqual(before.cost + 1e-6);
    return now;
  });
  expect(answer.cost.total).toBeLessThanOrEqual(heard.at(-1)!.cost + 1e-6);
  expect(answer.seconds).toBeLessThan(2);
});

describe('illegal locks', () => {
  const at = '2026-03-07T09:00:00+01:00';

  it('are named with their rule', async () => {
    const games = [aGame('g', at, { locked: { chief: 'low', umpire: 'high' } })];
    const officials = [anOfficial('low', { level: 1 }), anOfficial('high', { level: 4 })];
    const answer = await solved(aProblem({ games, officials }), { ...stopped, steps: 10 });
    expect(answer.status).toBe('infeasible');
    expect(answer.lockViolations).toEqual([
      {
        rule: 'H9',
        game: 'g',
        officials: ['low', 'high'],
        message: "the chief has level 1, below the umpire's level 4",
      },
    ]);
  });

  it('include a minor whom nobody can join, and none whom somebody can', async () => {
    const games = [
      aGame('g', at, { locked: { umpire: 'kid' } }),
      aGame('h', at, { locked: { umpire: 'boy' } }),
    ];
    const kids = [anOfficial('kid', { minor: true, level: 1 }), anOfficial('boy', { minor: true, level: 1 })];
    const alone = await solved(aProblem({ games, officials: kids }), { ...stopped, steps: 10 });
    expect(alone.lockViolations?.map(({ rule }) => rule)).toEqual(['H8']);
    // One adult for two games at one time is not enough either.
    const short = await solved(aProblem({ games, officials: [...kids, anOfficial('a')] }), {
      ...stopped,
      steps: 10,
    });
    expect(short.lockViolations?.map(({ game }) => game)).toEqual(['g', 'h']);
    const enough = aProblem({
      games,
      officials: [...kids, anOfficial('a', { avoidOfficials: ['kid'] }), anOfficial('b')],
    });
    const answer = await solved(enough, { ...stopped, steps: 10 });
    expect(answer.assignments.map(({ chief }) => chief)).toEqual(['b', 'a']);
  });
});

describe('extremes', () => {
  const at = '2026-03-07T09:00:00+01:00';
  const run = (problem: SlateProblem) => solved(problem, { ...stopped, steps: 8192 });

  it('nothing at all', async () => {
    expect((await run(aProblem({}))).assignments).toEqual([]);
  });

  it('no officials, or no games', async () => {
    const weights = { openSeat: 100, balance: 1 };
    expect((await run(aProblem({ games: [aGame('g', at)], weights }))).cost.total).toBe(200);
    const officials = [anOfficial('a', { targetGames: 0.5 })];
    expect((await run(aProblem({ officials, weights }))).cost.total).toBe(0.25);
  });

  it('one official for everything, ten games at one instant', async () => {
    const games = Array.from({ length: 10 }, (_, i) => aGame(`g${i}`, at));
    const answer = await run(aProblem({ games, officials: [anOfficial('a')], weights: { openSeat: 1000 } }));
    expect(answer.cost.open).toBe(19_000);
  });

  it('all seats locked, some of them open', async () => {
    const games = [aGame('g', at, { locked: { chief: 'a', umpire: null } })];
    const answer = await run(aProblem({ games, officials: [anOfficial('a')], weights: { openSeat: 1000 } }));
    expect(answer.assignments).toEqual([{ game: 'g', chief: 'a', umpire: null }]);
    expect(answer.cost.open).toBe(0);
  });

  it('huge weights, limits and ways', async () => {
    const places = [
      { id: 'hall', lat: 45, lon: 8 },
      { id: 'moon', lat: -45, lon: -172 },
    ];
    const legs = [{ from: 'hall', to: 'moon', minutes: 2 ** 40, metres: 2 ** 45 }];
    const officials = [
      anOfficial('a', {
        home: 'moon',
        maxHomeMinutes: 2 ** 50,
        maxGames: 2 ** 50,
        maxGamesPerDay: 2 ** 50,
        level: 2 ** 52,
      }),
    ];
    const problem = aProblem({
      games: [aGame('g', at)],
      officials,
      weights: { openSeat: 1e12, travelPerKm: 1e3 },
      own: { places, travel: { circuity: 1, speedKmh: 1, fixedMinutes: 0, legs } },
    });
    expect((await run(problem)).cost.open).toBe(1e12);
  });

  it('no weight on anything', async () => {
    const slate = randomSlate({ seed: 15, games: 10, officials: 10 });
    const weights = aProblem({}).policy.weights;
    expect((await run({ ...slate, policy: { ...slate.policy, weights } })).cost.open).toBe(0);
  });

  it('a season of sixty days, with games over midnight', async () => {
    const games = Array.from({ length: 60 }, (_, i) =>
      aGame(`g${i}`, new Date(Date.UTC(2026, 0, 2 + i, 22, 30)).toISOString(), { durationMinutes: 120 }),
    );
    const officials = [anOfficial('a', { maxGames: 40 }), anOfficial('b', { maxGames: 60 }), anOfficial('c')];
    const answer = await run(
      aProblem({ games, officials, weights: { openSeat: 1000 }, policy: { minRestMinutes: 1200 } }),
    );
    expect(answer.cost.open).toBeGreaterThan(0);
  });
});

it('allows more time to larger slates by default', () => {
  const sizes = [10, 100, 1000, 10_000].map(defaultSeconds);
  expect(sizes).toEqual([...sizes].sort((a, b) => a - b));
});
