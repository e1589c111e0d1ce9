// Goal: the solver's optimum and its proof are those of an outside solver on a plain model. Source: HiGHS (Huangfu
// and Hall, Parallelizing the dual revised simplex method, Mathematical Programming Computation 10, 2018), as the
// npm package `highs`. Method: generated slates of a weekend's size as arc flows, written for this test alone.
import startHighs, { type Highs } from 'highs';
import { checkAnswer, solveSlate } from '../../../src/solver';
import { arcFlowOf } from '../../support/solver/arc-flow';
import { bruteForce } from '../../support/solver/brute-force';
import { harshSlate } from '../../support/solver/harsh-slate';
import { randomSlate } from '../../support/solver/random-slate';

const nowSeconds = () => performance.now() / 1000;

let highs: Highs;
beforeAll(async () => {
  highs = await startHighs();
});

it('the plain model itself agrees with trying everything', () => {
  let compared = 0;
  for (let seed = 1; seed <= 40; seed++) {
    const { problem } = harshSlate(seed);
    const { optimum } = bruteForce(problem);
    if (optimum === Infinity) continue;
    const { proven, cost } = arcFlowOf(problem).program.solve(highs, { seconds: 10 });
    expect({ seed, proven, cost }).toEqual({
      seed,
      proven: true,
      cost: expect.closeTo(optimum, 3) as unknown,
    });
    compared++;
  }
  expect(compared).toBeGreaterThan(20);
});

it.each([
  { seed: 101, games: 15, officials: 24, kinds: {} },
  { seed: 102, games: 18, officials: 28, kinds: { lockedShare: 0.1, publishedShare: 0.4 } },
  { seed: 103, games: 20, officials: 18, kinds: { chiefShare: 0.4 } },
  { seed: 104, games: 24, officials: 34, kinds: { legShare: 0.5, publishedShare: 1 } },
])(
  '$games games, seed $seed',
  async ({ seed, games, officials, kinds }) => {
    const problem = randomSlate({ seed, games, officials, ...kinds });
    const plain = arcFlowOf(problem);
    const { proven, cost, values } = plain.program.solve(highs, { seconds: 60 });
    expect(proven).toBe(true);
    const answer = await solveSlate(problem, { nowSeconds, seconds: 60, threads: 2 });
    expect(checkAnswer(problem, answer)).toMatchObject({ ok: true });
    expect(answer.status).toBe('optimal');
    const tolerance = 1e-6 * Math.max(1, cost!);
    expect(Math.abs(answer.cost.total - cost!)).toBeLessThanOrEqual(tolerance);
    expect(answer.bound!).toBeLessThanOrEqual(cost! + tolerance);
    // What HiGHS found is a legal slate at that price, so that the model asks for no more than the rules do.
    const theirs = { ...answer, assignments: plain.crewsOf(values) };
    const report = checkAnswer(problem, theirs);
    expect(report.violations).toEqual([]);
  },
  150_000,
);
