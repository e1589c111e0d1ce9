// Goal: pricing finds each official's weekend of least reduced cost, and never says more than it. Method: all
// weekends of every official of tiny slates, listed by the checker's own rules, at random prices and fines.
import { compileSlate, type CompiledSlate } from '../../../../src/solver';
import { detourSlackMetres } from '../../../../src/solver/bound/detour-slack';
import { listStops, type Stops } from '../../../../src/solver/bound/stops';
import { WeekendPricing } from '../../../../src/solver/bound/weekend-pricing';
import { SeededRandom } from '../../../../src/solver/random';
import { bruteWeekends, type BruteWeekend } from '../../../support/solver/brute-weekends';
import { countedTimes, harshSlate } from '../../../support/solver/harsh-slate';

const SLATES = 200;
const PRICES_EACH = 20;

interface Prices {
  readonly seats: Float64Array;
  readonly fines: Float64Array;
}

function somePrices(slate: CompiledSlate, stops: Stops, random: SeededRandom): Prices {
  const scale = [10, 80, 400][random.below(3)]!;
  return {
    seats: Float64Array.from(
      { length: 2 * slate.gameCount * slate.classCount },
      () => scale * (1.3 * random.unit() - 0.3),
    ),
    fines: Float64Array.from({ length: stops.game.length }, () =>
      random.unit() < 0.7 ? 0 : 30 * random.unit(),
    ),
  };
}

/** Reduced cost of a weekend by its seats alone. */
function reducedCost(
  slate: CompiledSlate,
  stops: Stops,
  o: number,
  weekend: BruteWeekend,
  at: Prices,
): number {
  return weekend.seats.reduce((cost, { game, side }) => {
    const index = slate.gameIds.indexOf(game);
    const price = at.seats[(2 * index + side) * slate.classCount + slate.officialClass[o]!]!;
    return cost - price + at.fines[stops.game.indexOf(index, stops.start[o])]!;
  }, weekend.cost);
}

it('is equal to the least of all weekends where ways are metric, and never above it elsewhere', () => {
  const counted = {
    ...countedTimes(),
    equal: 0,
    below: 0,
    several: 0,
    traced: 0,
  };
  for (let seed = 1; seed <= SLATES; seed++) {
    const { problem, times, metric } = harshSlate(seed, { games: 5, officials: 2 });
    const slate = compileSlate(problem);
    const stops = listStops(slate);
    const pricing = new WeekendPricing(slate, stops, detourSlackMetres(slate));
    const random = new SeededRandom(seed, 6);
    for (const official of problem.officials) {
      const o = slate.officialIds.indexOf(official.id);
      const weekends = bruteWeekends(problem, official);
      for (let i = 0; i < PRICES_EACH; i++) {
        const at = somePrices(slate, stops, random);
        const costs = weekends.map((weekend) => reducedCost(slate, stops, o, weekend, at));
        const least = Math.min(...costs);
        const found = pricing.price(o, at.seats, at.fines);
        const seen = { seed, official: official.id, i };
        expect({ ...seen, above: Math.max(0, found - least - 1e-7) }).toEqual({ ...seen, above: 0 });
        counted[times]++;
        if (found < least - 1e-7) {
          counted.below++;
          // Only ways that are not metric, and dates that come twice, make a weekend cheaper than any legal one.
          expect({ ...seen, metric: metric && times !== 'date-twice' }).toEqual({ ...seen, metric: false });
          continue;
        }
        counted.equal++;
        const best = weekends[costs.indexOf(least)]!;
        if (best.seats.length > 1) counted.several++;
        const seats = best.seats.map(({ game, side }) => 2 * slate.gameIds.indexOf(game) + side);
        const traced = [...pricing.seats.subarray(0, pricing.seatsFound)];
        if (traced.join() === seats.sort((a, b) => a - b).join()) counted.traced++;
      }
    }
  }
  const { below, traced, equal, ...kinds } = counted;
  expect(Object.entries(kinds).filter(([, count]) => count < 200)).toEqual([]);
  expect(below).toBeGreaterThan(0);
  // Ties aside, the weekend left behind is the one that costs so much.
  expect(traced).toBeGreaterThan(0.95 * equal);
});
