import { type Lagrangian } from '../../../src/solver/bound/lagrangian';
import { type SeededRandom } from '../../../src/solver/random';

/** Any prices of seats, negative ones among them, and multipliers within their limits. */
export function randomPrices(lagrangian: Lagrangian, random: SeededRandom): Float64Array {
  const scale = [0, 30, 150, 2000][random.below(4)]!;
  return Float64Array.from({ length: lagrangian.priceCount }, (_, at) => {
    if (at < lagrangian.seatPriceCount) return scale * (1.2 * random.unit() - 0.2);
    if (random.unit() < 0.3) return 0;
    return random.unit() * Math.min(400, lagrangian.partners.most[at - lagrangian.seatPriceCount]!);
  });
}
