// Goal: a proof tells only what is true, ends when told to, and takes better slates from elsewhere. Method: tiny
// slates whose cheapest cost is known from trying everything; the world around the proof is made up.
import startHighs from 'highs';
import { compileSlate, type Holders } from '../../../../src/solver';
import { Prover, type ProverOptions } from '../../../../src/solver/prove/prover';
import { type ProverNews } from '../../../../src/solver/prove/prover-messages';
import { startSlate } from '../../../../src/solver/search/start-slate';
import { bruteForce } from '../../../support/solver/brute-force';
import { harshSlate } from '../../../support/solver/harsh-slate';
import { randomSlate } from '../../../support/solver/random-slate';

interface Priced {
  readonly holders: Holders;
  readonly cost: number;
}

function prover(problem: ReturnType<typeof randomSlate>, own: Partial<ProverOptions> = {}) {
  const slate = compileSlate(problem);
  const start = startSlate(slate);
  if (!start.ok) return null;
  const told: ProverNews[] = [];
  const options: ProverOptions = {
    slate,
    loadHighs: () => startHighs(),
    tell: (news) => told.push(news),
    fetchBetter: () => null,
    knownCost: () => Infinity,
    isOver: () => false,
    ...own,
  };
  const best = (): number =>
    Math.min(start.cost, ...told.flatMap((news) => (news.kind === 'slate' ? [news.cost] : [])));
  const bound = (): number =>
    Math.max(-Infinity, ...told.flatMap((news) => (news.kind === 'bound' ? [news.bound] : [])));
  return { prover: new Prover(options, start), best, bound, slate, start };
}

it('proves the optimum of tiny slates, and the last bound meets it', async () => {
  let proven = 0;
  for (let seed = 1; seed <= 25; seed++) {
    const { problem } = harshSlate(seed);
    const run = prover(problem);
    if (run === null) continue;
    const { optimum } = bruteForce(problem);
    expect({ seed, proven: await run.prover.run() }).toEqual({ seed, proven: true });
    const tolerance = 1e-6 * Math.max(1, optimum);
    expect({ seed, off: Math.max(0, Math.abs(run.best() - optimum) - tolerance) }).toEqual({ seed, off: 0 });
    expect(run.bound()).toBeLessThanOrEqual(optimum + 1e-9);
    expect(run.bound()).toBeGreaterThanOrEqual(optimum - tolerance);
    proven++;
  }
  expect(proven).toBeGreaterThan(15);
});

describe('a slate that takes a while', () => {
  const problem = randomSlate({ seed: 9, games: 30, officials: 34 });

  it('is left unproven when time is over, with a bound below its cost', async () => {
    let looks = 0;
    const run = prover(problem, { isOver: () => ++looks > 20 })!;
    expect(await run.prover.run()).toBe(false);
    expect(run.bound()).toBeGreaterThan(-Infinity);
    expect(run.bound()).toBeLessThan(run.best());
  });

  it('gets the same bounds again from the same number of price steps', () => {
    const bounds = [0, 1].map(() => {
      const run = prover(problem)!;
      run.prover.raise(100);
      return run.bound();
    });
    expect(bounds[0]).toBe(bounds[1]);
    expect(bounds[0]).toBeGreaterThan(-Infinity);
  });
});

it('takes a better slate from elsewhere and does not tell of it again', async () => {
  const small = randomSlate({ seed: 3, games: 3, officials: 4, venues: 1 });
  const first = prover(small)!;
  await first.prover.run();
  const { optimum } = bruteForce(small);
  let handed = 0;
  const told: Priced[] = [];
  const start = { holders: new Int32Array(6).fill(-1), cost: first.start.cost + 1e6 };
  const options: ProverOptions = {
    slate: first.slate,
    loadHighs: () => startHighs(),
    tell: (news) => {
      if (news.kind === 'slate') told.push(news);
    },
    fetchBetter: () => {
      handed++;
      return { holders: new Int32Array(6).fill(-1), cost: optimum };
    },
    knownCost: () => optimum,
    isOver: () => false,
  };
  expect(await new Prover(options, start).run()).toBe(true);
  expect(handed).toBeGreaterThan(0);
  expect(told).toEqual([]);
});
