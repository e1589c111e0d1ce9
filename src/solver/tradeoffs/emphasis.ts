import { sharedFloat64 } from '../compile/arrays';
import { type CompiledSlate } from '../compile/compiled-slate';
import { type CostBreakdown } from '../answer';

/** How much each of the three concerns weighs, against 1 for the problem's own weights. */
export interface Emphasis {
  /** Multiplies the price of kilometres. */
  readonly driving: number;
  /** Multiplies the pairing tables and the price of levels above the seat's target. */
  readonly development: number;
  /** Multiplies the price of the distance from the season targets. */
  readonly fairness: number;
}

export const AS_WEIGHTED: Emphasis = { driving: 1, development: 1, fairness: 1 };

/** What a slate costs in each concern, at the problem's own weights: driving, development, fairness. */
export type Figures = readonly [number, number, number];

export function figuresOf({ travel, pairing, overLevel, balance }: CostBreakdown): Figures {
  return [travel, pairing + overLevel, balance];
}

/** No worse in any concern, and better in at least one. */
export function dominates(one: Figures, other: Figures): boolean {
  return one.every((figure, i) => figure <= other[i]!) && one.some((figure, i) => figure < other[i]!);
}

/** However much a concern weighs, an open seat weighs more still. */
const OPEN_SEAT_FACTOR = 16;

/** The same slate at other weights; its arrays are shared but for the pairing tables. */
export function emphasise(slate: CompiledSlate, emphasis: Emphasis): CompiledSlate {
  const { weights } = slate;
  const pairingCost = sharedFloat64(slate.pairingCost.length);
  slate.pairingCost.forEach((cost, entry) => (pairingCost[entry] = cost * emphasis.development));
  return {
    ...slate,
    pairingCost,
    weights: {
      ...weights,
      openSeat: weights.openSeat * OPEN_SEAT_FACTOR,
      travelPerKm: weights.travelPerKm * emphasis.driving,
      overLevel: weights.overLevel * emphasis.development,
      balance: weights.balance * emphasis.fairness,
    },
  };
}
