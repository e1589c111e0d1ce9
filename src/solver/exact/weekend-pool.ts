import { type CompiledSlate } from '../compile';
import { type Weekends } from './enumerate-weekends';

/** A list of weekends that shrinks as proofs rule weekends out. */
export interface WeekendPool {
  /** Official of each weekend. */
  readonly official: Int32Array;
  /** Seats of weekend w: seats[seatStart[w]] … seats[seatStart[w + 1] − 1]. */
  readonly seatStart: Int32Array;
  readonly seats: Int32Array;
  /** What the weekend costs above its official's cheapest one, at the prices it was listed by; at least 0. */
  readonly excess: Float64Array;
}

export function poolOf(weekends: Weekends, leastCost: Float64Array): WeekendPool {
  const official = Int32Array.from(weekends.official);
  return {
    official,
    seatStart: Int32Array.from(weekends.seatStart),
    seats: Int32Array.from(weekends.seats),
    excess: Float64Array.from(weekends.reducedCost, (cost, w) =>
      Math.max(0, cost - leastCost[official[w]!]!),
    ),
  };
}

export function keepWeekends(pool: WeekendPool, keep: (weekend: number) => boolean): WeekendPool {
  const official: number[] = [];
  const seatStart: number[] = [0];
  const seats: number[] = [];
  const excess: number[] = [];
  for (let w = 0; w < pool.official.length; w++) {
    if (!keep(w)) continue;
    official.push(pool.official[w]!);
    for (let i = pool.seatStart[w]!; i < pool.seatStart[w + 1]!; i++) seats.push(pool.seats[i]!);
    seatStart.push(seats.length);
    excess.push(pool.excess[w]!);
  }
  return {
    official: Int32Array.from(official),
    seatStart: Int32Array.from(seatStart),
    seats: Int32Array.from(seats),
    excess: Float64Array.from(excess),
  };
}

/**
 * The things of which a slate has one each, as numbers: seat s is s, official o is 2·gameCount + o. A weekend
 * uses its seats and its official.
 */
export function usesOf(slate: CompiledSlate, pool: WeekendPool, weekend: number): number[] {
  const uses: number[] = [];
  for (let i = pool.seatStart[weekend]!; i < pool.seatStart[weekend + 1]!; i++) uses.push(pool.seats[i]!);
  uses.push(2 * slate.gameCount + pool.official[weekend]!);
  return uses;
}
