import type { Highs } from 'highs';
import { Lagrangian, PriceAscent, safeBound } from '../bound/lagrangian';
import { type CompiledSlate } from '../compile';
import { proveOptimum } from '../exact/prove-optimum';
import { solvedSlate, type SolvedSlate } from '../reasons/solve-again';

export interface WithdrawalProof {
  readonly solved: SolvedSlate;
  readonly bound: number;
}

/** A proven optimum's bound is stated this far below its cost, to be on the safe side of rounding. */
const PROVEN_MARGIN = 4e-7;

/**
 * Raises the bound of a slate without one official, from prices of the slate with them, and then tries to prove
 * the cheapest slate. What is proven when time is up is what it gives.
 */
export async function proveWithdrawal(
  compiled: CompiledSlate,
  start: SolvedSlate,
  setting: {
    readonly seatPrices: Float64Array;
    readonly loadHighs: () => Promise<Highs>;
    readonly isOver: () => boolean;
  },
): Promise<WithdrawalProof> {
  const lagrangian = new Lagrangian(compiled);
  const before = new PriceAscent(lagrangian);
  // The official stays on the roster, so that there are the same classes and as many prices.
  before.bestPrices.set(setting.seatPrices);
  const ascent = before.again();
  while (!ascent.settled && !setting.isOver()) ascent.step(start.cost.total);
  let solved = start;
  let bound = safeBound(ascent.best, start.cost.total);
  if (setting.isOver()) return { solved, bound };
  const outcome = proveOptimum(lagrangian, ascent.bestPrices, {
    highs: await setting.loadHighs(),
    best: () => ({ holders: solved.holders, cost: solved.cost.total }),
    isOver: setting.isOver,
    onBound: (raised) => {
      bound = Math.max(bound, raised);
    },
    onSlate: (holders, cost) => {
      if (cost < solved.cost.total) solved = solvedSlate(compiled, holders);
    },
  });
  const { total } = solved.cost;
  if (outcome.kind === 'proven')
    bound = Math.max(bound, total - PROVEN_MARGIN * Math.max(1, Math.abs(total)));
  return { solved, bound };
}
