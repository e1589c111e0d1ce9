// Goal: the bound is one, at any prices whatever. Method: the Lagrangian of hundreds of tiny slates of every
// awkward kind, at random prices and along an ascent, against the cheapest legal slate found by trying all.
import { compileSlate } from '../../../../src/solver';
import { Lagrangian, PriceAscent } from '../../../../src/solver/bound/lagrangian';
import { SeededRandom } from '../../../../src/solver/random';
import { bruteForce } from '../../../support/solver/brute-force';
import { countedTimes, harshSlate } from '../../../support/solver/harsh-slate';
import { randomPrices } from '../../../support/solver/random-prices';

const SLATES = 200;
const PRICES_EACH = 40;

it('is never above the cheapest legal slate', () => {
  const counted = {
    ...countedTimes(),
    metric: 0,
    crooked: 0,
    partnerRows: 0,
    locked: 0,
    published: 0,
    minors: 0,
    tight: 0,
  };
  for (let seed = 1; seed <= SLATES; seed++) {
    const { problem, times, metric } = harshSlate(seed);
    const { optimum } = bruteForce(problem);
    // Locks that nobody can keep have no slate to compare with.
    if (optimum === Infinity) continue;
    const lagrangian = new Lagrangian(compileSlate(problem));
    const random = new SeededRandom(seed, 5);
    const tolerance = 1e-7 * Math.max(1, optimum);
    for (let i = 0; i < PRICES_EACH; i++) {
      const bound = lagrangian.evaluate(randomPrices(lagrangian, random));
      expect({ seed, i, above: Math.max(0, bound - optimum - tolerance) }).toEqual({ seed, i, above: 0 });
    }
    const ascent = new PriceAscent(lagrangian);
    for (let step = 0; step < 150; step++) ascent.step(optimum);
    expect({ seed, above: Math.max(0, ascent.best - optimum - tolerance) }).toEqual({ seed, above: 0 });
    counted[times]++;
    counted[metric ? 'metric' : 'crooked']++;
    if (lagrangian.partners.count > 0) counted.partnerRows++;
    if (problem.games.some(({ locked }) => locked !== undefined)) counted.locked++;
    if (problem.games.some(({ published }) => published !== undefined)) counted.published++;
    if (problem.officials.some(({ minor }) => minor)) counted.minors++;
    if (ascent.best > optimum - 0.01 * Math.max(1, optimum)) counted.tight++;
  }
  // The property means something only if slates of every kind were among them, and some bounds come close.
  expect(Object.entries(counted).filter(([, count]) => count < 10)).toEqual([]);
});
