import { type Assignment, type CostBreakdown, type Violation } from '../answer';
import { type SeatName, type SlateProblem } from '../problem';
import { type FewestPeople } from './find-repairs';
import { type RepairKind } from './repair-pool';

export interface SeatOfGame {
  readonly game: string;
  readonly seat: SeatName;
}

/**
 * One call to make: the official gives up one seat, takes one, or both. Whoever takes or leaves several
 * seats stands in several calls.
 */
export interface RepairCall {
  readonly official: string;
  readonly leaves: SeatOfGame | null;
  readonly takes: SeatOfGame | null;
}

/** A legal slate that answers what happened. */
export interface RepairAlternative {
  /** `anew`: the whole slate searched again from the best repair, the price of every change included. */
  readonly kind: RepairKind | 'anew';
  /** Everybody whose seats change, but for the officials who withdrew and only lose what they cannot hold; ascending ids. */
  readonly people: readonly string[];
  /** Along the chains: who takes a broken seat, who takes the seat that they leave, and so on. */
  readonly calls: readonly RepairCall[];
  /** Seats that somebody was published for, or that are new, and that stay open. */
  readonly openSeats: readonly SeatOfGame[];
  /** Every game of the changed problem once, in its order. */
  readonly assignments: readonly Assignment[];
  readonly cost: CostBreakdown;
  /** Against the published slate as it stood, priced in the changed problem. */
  readonly costChange: CostBreakdown;
}

/** A seat that has to find somebody else, whatever is done. */
export interface BrokenSeat extends SeatOfGame {
  /** The published official who cannot hold it; null for a seat of a new game. */
  readonly official: string | null;
  /** Why not, in words with figures; empty for a new game. */
  readonly reasons: readonly string[];
}

export interface RepairReport {
  readonly ok: true;
  /** The problem after the events, with the published slate in it and without the locks that were let go. */
  readonly problem: SlateProblem;
  readonly brokenSeats: readonly BrokenSeat[];
  /** Rules that the published slate breaks now beyond those seats: one of several seats has to change. */
  readonly clashes: readonly Violation[];
  /** Locks whose official cannot hold the seat any more. */
  readonly releasedLocks: readonly SeatOfGame[];
  /** Fewest open seats first, then fewest people, then cost. Empty when nothing is broken, or nothing was found in time. */
  readonly alternatives: readonly RepairAlternative[];
  /** For comparison; the cheapest alternative again when nothing cheaper was found. Null without alternatives or when not asked for. */
  readonly anew: RepairAlternative | null;
  /** Null like the alternatives are empty. */
  readonly fewest: FewestPeople | null;
  /** What the published slate costs in the changed problem, broken as it is. */
  readonly publishedCost: CostBreakdown;
  /** Officials tried for seats. */
  readonly steps: number;
}

export type RepairOutcome =
  | RepairReport
  /** The locks that are left cannot be kept legally any more. */
  | { readonly ok: false; readonly lockViolations: readonly Violation[] };
