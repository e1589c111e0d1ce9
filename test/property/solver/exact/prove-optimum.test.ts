// Goal: what is called proven is the cheapest legal slate, and cuts never rule it out. Method: tiny slates of every
// awkward kind, proven from the poor start of a slate with only its locks, against trying everything.
import startHighs, { type Highs } from 'highs';
import { compileSlate, priceSlate, type CompiledSlate, type Holders } from '../../../../src/solver';
import { Lagrangian, PriceAscent } from '../../../../src/solver/bound/lagrangian';
import { noWeekends, WeekendEnumeration } from '../../../../src/solver/exact/enumerate-weekends';
import { proveOptimum } from '../../../../src/solver/exact/prove-optimum';
import { brokenSubsetRows } from '../../../../src/solver/exact/subset-rows';
import { poolOf, usesOf, type WeekendPool } from '../../../../src/solver/exact/weekend-pool';
import { SeededRandom } from '../../../../src/solver/random';
import { judgeSlate } from '../../../../src/solver/rules/judge-slate';
import { startSlate } from '../../../../src/solver/search/start-slate';
import { bruteForce } from '../../../support/solver/brute-force';
import { countedTimes, harshSlate } from '../../../support/solver/harsh-slate';
import { randomSlate } from '../../../support/solver/random-slate';

let highs: Highs;
beforeAll(async () => {
  highs = await startHighs();
});

it('proves the cheapest legal slate and no bound above it', () => {
  const counted = { ...countedTimes(), improved: 0, alreadyBest: 0 };
  for (let seed = 1; seed <= 100; seed++) {
    const { problem, times } = harshSlate(seed);
    const slate = compileSlate(problem);
    const start = startSlate(slate);
    if (!start.ok) continue;
    const { optimum } = bruteForce(problem);
    const lagrangian = new Lagrangian(slate);
    const ascent = new PriceAscent(lagrangian);
    for (let step = 0; step < 30; step++) ascent.step(start.cost);
    let best: { readonly holders: Holders; readonly cost: number } = start;
    let bound = -Infinity;
    const outcome = proveOptimum(lagrangian, ascent.bestPrices, {
      highs,
      best: () => best,
      isOver: () => false,
      onBound: (next) => (bound = Math.max(bound, next)),
      onSlate: (holders, cost) => {
        expect({ seed, violations: judgeSlate(slate, holders) }).toEqual({ seed, violations: [] });
        best = { holders, cost };
      },
    });
    expect({ seed, outcome }).toEqual({ seed, outcome: { kind: 'proven' } });
    expect({ seed, cost: priceSlate(slate, best.holders).total }).toEqual({
      seed,
      cost: expect.closeTo(optimum, 3) as unknown,
    });
    const tolerance = 1e-6 * Math.max(1, optimum);
    expect({ seed, above: Math.max(0, bound - optimum - tolerance) }).toEqual({ seed, above: 0 });
    counted[times]++;
    counted[best === start ? 'alreadyBest' : 'improved']++;
  }
  expect(Object.entries(counted).filter(([, count]) => count < 8)).toEqual([]);
});

describe('subset rows', () => {
  /** All weekends of a slate, with nothing earned. */
  function everyWeekend(slate: CompiledSlate): WeekendPool {
    const lagrangian = new Lagrangian(slate);
    const prices = new Float64Array(lagrangian.priceCount);
    lagrangian.evaluate(prices);
    const enumeration = new WeekendEnumeration(slate, lagrangian.stops, prices, lagrangian.fines);
    const weekends = noWeekends();
    for (let o = 0; o < slate.officialCount; o++) enumeration.list(o, Infinity, weekends, 1e6);
    return poolOf(weekends, new Float64Array(slate.officialCount));
  }

  /** Weekends drawn one after another that share no seat and no official, as in every slate. */
  function someChoice(slate: CompiledSlate, pool: WeekendPool, random: SeededRandom): readonly number[] {
    const taken = new Set<number>();
    const chosen: number[] = [];
    for (let draw = 0; draw < 400; draw++) {
      const weekend = random.below(pool.official.length);
      const uses = usesOf(slate, pool, weekend);
      if (uses.some((thing) => taken.has(thing))) continue;
      for (const thing of uses) taken.add(thing);
      chosen.push(weekend);
    }
    return chosen;
  }

  const hits = (slate: CompiledSlate, pool: WeekendPool, row: readonly number[], weekend: number): number =>
    usesOf(slate, pool, weekend).filter((thing) => row.includes(thing)).length;

  it('are broken by the shares that they were found for, and by no slate', () => {
    const counted = { rows: 0, touched: 0 };
    for (let seed = 1; seed <= 40; seed++) {
      const slate = compileSlate(randomSlate({ seed, games: 5, officials: 5, venues: 2 }));
      const pool = everyWeekend(slate);
      const random = new SeededRandom(seed, 8);
      const shares = new Float64Array(pool.official.length);
      // Halves of several slates at once: every seat and official is used at most once, in parts.
      const halves = [1, 2, 3].map(() => someChoice(slate, pool, random));
      for (const choice of halves) for (const weekend of choice) shares[weekend]! += 1 / halves.length;
      for (let i = 0; i < 6; i++) shares[random.below(shares.length)]! += 0.4;
      for (const row of brokenSubsetRows(slate, pool, shares, 60)) {
        counted.rows++;
        const sum = shares.reduce((total, share, w) => {
          const fractional = share > 1e-6 && share < 1 - 1e-6;
          return fractional && hits(slate, pool, row, w) >= 2 ? total + share : total;
        }, 0);
        expect(sum).toBeGreaterThan(1.02 - 1e-9);
        for (let i = 0; i < 10; i++) {
          const used = someChoice(slate, pool, random).filter((w) => hits(slate, pool, row, w) >= 2).length;
          expect(used).toBeLessThanOrEqual(1);
          counted.touched += used;
        }
      }
    }
    expect(Math.min(...Object.values(counted))).toBeGreaterThan(100);
  });
});
