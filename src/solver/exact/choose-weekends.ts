import type { Highs } from 'highs';
import { type CompiledSlate } from '../compile';
import { NOBODY } from '../compile/facts';
import { type Holders } from '../tours';
import { weekendModel, type WeekendModelParts } from './weekend-model';
import { type WeekendPool } from './weekend-pool';

// Of HiGHS: model states and kinds of callbacks.
export const OPTIMAL_MODEL = 7;
export const INFEASIBLE_MODEL = 8;
const IMPROVING_SOLUTION = 4;
const MIP_INTERRUPT = 6;

export interface ChoiceSetting {
  readonly highs: Highs;
  /** Weekends of a known choice, as indexes into the pool, to set out from. */
  readonly known: readonly number[] | null;
  /** Called with each better choice: entry w is near 1 where weekend w is chosen. */
  readonly onChoice: (shares: Float64Array) => void;
  /** Called often with the proven lower limit of the model's cost; true ends the search. */
  readonly isEnough: (lowerLimit: number) => boolean;
}

/**
 * Searches for the cheapest choice of weekends and crews by HiGHS's branch and cut. `settled` when it is
 * found (or there is none); `ended` when `isEnough` said so before.
 */
export function chooseWeekends(
  slate: CompiledSlate,
  parts: WeekendModelParts,
  { highs, known, onChoice, isEnough }: ChoiceSetting,
): 'settled' | 'ended' {
  const linear = weekendModel(slate, parts);
  const weekendCount = parts.pool.official.length;
  const integrality = new Int32Array(linear.numCols).fill(1, 0, weekendCount);
  const status = highs.withModel((model) => {
    // HiGHS's presolve takes longer on these wide models than all the rest together.
    model.options.set({ output_flag: false, presolve: 'off', mip_rel_gap: 0, mip_abs_gap: 1e-7 });
    model.passModel({ ...linear, integrality });
    if (known !== null) model.setSolution({ indices: [...known], values: known.map(() => 1) });
    return model.run({
      [IMPROVING_SOLUTION]: (event) => {
        const { mip_solution: solution } = event.data;
        if (solution !== undefined) onChoice(solution.subarray(0, weekendCount));
        return undefined;
      },
      [MIP_INTERRUPT]: (event) => {
        const { mip_dual_bound: dual } = event.data;
        if (isEnough(dual !== undefined && Number.isFinite(dual) ? dual : -Infinity)) event.interrupt();
        return undefined;
      },
    }).modelStatus;
  });
  return status === OPTIMAL_MODEL || status === INFEASIBLE_MODEL ? 'settled' : 'ended';
}

/** Puts the officials of the chosen weekends into their seats. */
export function takeSeats(pool: WeekendPool, shares: Float64Array, holders: Holders): void {
  shares.forEach((share, weekend) => {
    if (share < 0.5) return;
    for (let i = pool.seatStart[weekend]!; i < pool.seatStart[weekend + 1]!; i++)
      holders[pool.seats[i]!] = pool.official[weekend]!;
  });
}

/** The weekends of `officials` in a slate, as indexes into the pool; null when one is not in it. */
export function weekendsOf(
  pool: WeekendPool,
  holders: Holders,
  officials: readonly number[],
): number[] | null {
  const seatsOf = new Map<number, number[]>(officials.map((official) => [official, []]));
  holders.forEach((holder, seat) => {
    if (holder !== NOBODY) seatsOf.get(holder)?.push(seat);
  });
  const key = (official: number, seats: ArrayLike<number>): string => [official, ...Array.from(seats)].join();
  const wanted = new Set([...seatsOf].map(([official, seats]) => key(official, seats)));
  const found: number[] = [];
  for (let w = 0; w < pool.official.length; w++) {
    if (wanted.has(key(pool.official[w]!, pool.seats.subarray(pool.seatStart[w], pool.seatStart[w + 1]))))
      found.push(w);
  }
  return found.length === officials.length ? found : null;
}
