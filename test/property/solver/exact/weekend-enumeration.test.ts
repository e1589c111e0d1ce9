// Goal: the list of weekends within a limit is complete, legal and priced right. Method: for every official of
// tiny slates, at random prices, fines and limits, the list against all weekends found by the checker's rules.
import { compileSlate, type CompiledSlate } from '../../../../src/solver';
import { Lagrangian } from '../../../../src/solver/bound/lagrangian';
import {
  noWeekends,
  WeekendEnumeration,
  type Weekends,
} from '../../../../src/solver/exact/enumerate-weekends';
import { SeededRandom } from '../../../../src/solver/random';
import { bruteWeekends } from '../../../support/solver/brute-weekends';
import { countedTimes, harshSlate } from '../../../support/solver/harsh-slate';
import { randomPrices } from '../../../support/solver/random-prices';

interface Listed {
  readonly cost: number;
  readonly reducedCost: number;
}

function bySeats(weekends: Weekends): Map<string, Listed> {
  const { official, seatStart, seats, cost, reducedCost } = weekends;
  return new Map(
    official.map((_, w) => [
      seats.slice(seatStart[w], seatStart[w + 1]).join(),
      { cost: cost[w]!, reducedCost: reducedCost[w]! },
    ]),
  );
}

/** Every weekend of an official with its reduced cost, from the checker's own figures. */
function allOf(
  slate: CompiledSlate,
  o: number,
  weekends: ReturnType<typeof bruteWeekends>,
  earned: (o: number, seat: number) => number,
): Map<string, Listed> {
  return new Map(
    weekends.map((weekend) => {
      const seats = weekend.seats
        .map(({ game, side }) => 2 * slate.gameIds.indexOf(game) + side)
        .sort((a, b) => a - b);
      const reducedCost = seats.reduce((sum, seat) => sum - earned(o, seat), weekend.cost);
      return [seats.join(), { cost: weekend.cost, reducedCost }];
    }),
  );
}

it('lists exactly the weekends within the limit', () => {
  const counted = { ...countedTimes(), none: 0, some: 0, all: 0, fined: 0 };
  for (let seed = 1; seed <= 150; seed++) {
    const { problem, times } = harshSlate(seed, { games: 4, officials: 3 });
    const slate = compileSlate(problem);
    const lagrangian = new Lagrangian(slate);
    const random = new SeededRandom(seed, 7);
    const weekendsOf = new Map(
      problem.officials.map((official) => [official.id, bruteWeekends(problem, official)]),
    );
    for (let i = 0; i < 6; i++) {
      const prices = randomPrices(lagrangian, random);
      lagrangian.evaluate(prices);
      const { stops, fines } = lagrangian;
      const enumeration = new WeekendEnumeration(slate, stops, prices, fines);
      const earned = (o: number, seat: number): number =>
        prices[seat * slate.classCount + slate.officialClass[o]!]! -
        fines[stops.game.indexOf(seat >> 1, stops.start[o])]!;
      for (const official of problem.officials) {
        const o = slate.officialIds.indexOf(official.id);
        const all = allOf(slate, o, weekendsOf.get(official.id)!, earned);
        const costs = [...all.values()].map(({ reducedCost }) => reducedCost);
        const [least, most] = [Math.min(...costs), Math.max(...costs)];
        const limit = least + (most - least) * (1.3 * random.unit() - 0.1) + 1e-5;
        const out = noWeekends();
        expect(enumeration.list(o, limit, out, 1000)).toBe(true);
        const listed = bySeats(out);
        const within = [...all].filter(([, { reducedCost }]) => reducedCost <= limit);
        const seen = { seed, i, official: official.id };
        expect({ ...seen, seats: [...listed.keys()].sort() }).toEqual({
          ...seen,
          seats: within.map(([seats]) => seats).sort(),
        });
        for (const [seats, { cost, reducedCost }] of within) {
          expect(listed.get(seats)!.cost).toBeCloseTo(cost, 6);
          expect(listed.get(seats)!.reducedCost).toBeCloseTo(reducedCost, 6);
        }
        expect(enumeration.leastCost(o)).toBeLessThanOrEqual(least + 1e-7);
        counted[times]++;
        counted[within.length === 0 ? 'none' : within.length === all.size ? 'all' : 'some']++;
        if (fines.some((fine) => fine > 0)) counted.fined++;
      }
    }
  }
  expect(Object.entries(counted).filter(([, count]) => count < 50)).toEqual([]);
});

it('says so when there are more than it may list', () => {
  const { problem } = harshSlate(2, { games: 4, officials: 3 });
  const slate = compileSlate(problem);
  const lagrangian = new Lagrangian(slate);
  const prices = new Float64Array(lagrangian.priceCount);
  lagrangian.evaluate(prices);
  const enumeration = new WeekendEnumeration(slate, lagrangian.stops, prices, lagrangian.fines);
  const all = noWeekends();
  expect(enumeration.list(0, 1e9, all, 1000)).toBe(true);
  const enough = all.official.length;
  expect(enough).toBeGreaterThan(1);
  expect(enumeration.list(0, 1e9, noWeekends(), enough)).toBe(true);
  expect(enumeration.list(0, 1e9, noWeekends(), enough - 1)).toBe(false);
});
