import { Lagrangian, PriceAscent, safeBound } from '../bound/lagrangian';
import { type CompiledSlate } from '../compile';
import { balanceCost } from '../costs/balance';

/** What raising the prices of the present slate has shown. */
export interface WithdrawalBounds {
  /**
   * By official: a proven lower bound on the cost of every legal slate in which they hold no seat. With locks on
   * the official it says nothing about slates that break those.
   */
  readonly byOfficial: Float64Array;
  /** Prices of seats by class of officials, to set out from where a bound is to be raised further. */
  readonly seatPrices: Float64Array;
}

/**
 * The prices are raised once for the whole slate; without an official their cheapest weekend is replaced by an
 * idle one, at the same prices.
 */
export function withdrawalBounds(
  slate: CompiledSlate,
  {
    presentCost,
    priceSteps,
    isOver,
  }: {
    readonly presentCost: number;
    readonly priceSteps: number;
    readonly isOver: () => boolean;
  },
): WithdrawalBounds {
  const lagrangian = new Lagrangian(slate);
  const ascent = new PriceAscent(lagrangian);
  while (ascent.steps < priceSteps && !ascent.settled && !(ascent.steps > 0 && isOver()))
    ascent.step(presentCost);
  const prices = ascent.bestPrices;
  const whole = lagrangian.evaluate(prices);
  const byOfficial = Float64Array.from({ length: slate.officialCount }, (_, official) => {
    const least = lagrangian.pricing.price(official, prices, lagrangian.fines);
    return safeBound(whole - least + balanceCost(slate, official, 0), presentCost);
  });
  return { byOfficial, seatPrices: prices.slice(0, lagrangian.seatPriceCount) };
}
