import { type CostBreakdown, type Violation } from '../answer';
import { type CompiledSlate } from '../compile';
import { compareIds } from '../compile/gather-facts';
import { NOBODY, SEAT_FREE, SEAT_KEPT_OPEN } from '../compile/facts';
import { type Holders } from '../tours';
import { ChangeReview, type SeatChange } from './change-review';
import { idOfHolder, placeOfSeat, type SeatPlace } from './present-slate';

/** The official takes the seat and gives up one of their own, which the seat's holder takes (nobody, when it was open). */
export interface SeatExchange {
  readonly gives: SeatPlace;
  readonly to: string | null;
  /** Added to the slate's cost, by term. */
  readonly change: CostBreakdown;
}

/** What placing one official in the seat would mean, everything else as it is. */
export type SeatCandidate =
  | {
      readonly kind: 'allowed';
      readonly official: string;
      /** Added to the slate's cost, by term, when the seat's holder goes and this official comes. */
      readonly change: CostBreakdown;
      /** The cheapest exchange of seats with the holder, when one is legal. */
      readonly exchange: SeatExchange | null;
    }
  | {
      readonly kind: 'forbidden';
      readonly official: string;
      /** Every hard rule that placing them would break, with its figures. Never empty. */
      readonly reasons: readonly Violation[];
      /** The cheapest exchange of seats with the holder that is legal all the same. */
      readonly exchange: SeatExchange | null;
    };

export interface SeatExplanation {
  readonly place: SeatPlace;
  readonly lock:
    | { readonly kind: 'free' }
    | { readonly kind: 'kept-open' }
    | { readonly kind: 'locked'; readonly official: string };
  /** Null when the seat is open. */
  readonly holder: {
    readonly official: string;
    /** Rules that are broken because they hold this seat; empty on a legal slate. */
    readonly reasons: readonly Violation[];
    /** Added to the slate's cost, by term, if they went and nobody came. */
    readonly leaving: CostBreakdown;
  } | null;
  /**
   * Everybody else: the allowed by the change of the total, then those whom only an exchange could bring,
   * by its change, then the rest by the number of rules in the way.
   */
  readonly candidates: readonly SeatCandidate[];
}

/** Why this official and not another: every official's reasons or price for one seat of a slate, legal or not. */
export function explainSeat(slate: CompiledSlate, holders: Holders, seat: number): SeatExplanation {
  const review = new ChangeReview(slate, holders);
  const holder = holders[seat]!;
  const candidates: SeatCandidate[] = [];
  for (let official = 0; official < slate.officialCount; official++)
    if (official !== holder) candidates.push(judgeCandidate(slate, review, seat, official));
  candidates.sort(
    (a, b) => orderOf(a) - orderOf(b) || amountOf(a) - amountOf(b) || compareIds(a.official, b.official),
  );
  return {
    place: placeOfSeat(slate, seat),
    lock: lockOf(slate, seat),
    holder: holder === NOBODY ? null : explainHolder(slate, review, seat, holder),
    candidates,
  };
}

/** One official's line of `explainSeat`; `official` does not hold the seat. */
export function judgeCandidate(
  slate: CompiledSlate,
  review: ChangeReview,
  seat: number,
  official: number,
): SeatCandidate {
  const placing = [{ seat, holder: official }];
  const reasons = review.newViolations(placing);
  const exchange = bestExchange(slate, review, seat, official);
  const id = slate.officialIds[official]!;
  return reasons.length === 0
    ? { kind: 'allowed', official: id, change: review.price(placing), exchange }
    : { kind: 'forbidden', official: id, reasons, exchange };
}

function bestExchange(
  slate: CompiledSlate,
  review: ChangeReview,
  seat: number,
  official: number,
): SeatExchange | null {
  const former = review.holders[seat]!;
  let best: SeatExchange | null = null;
  for (const game of new Set(review.gamesOf(official))) {
    for (const given of [2 * game, 2 * game + 1]) {
      if (review.holders[given] !== official) continue;
      const changes: readonly SeatChange[] = [
        { seat, holder: official },
        { seat: given, holder: former },
      ];
      if (review.newViolations(changes).length > 0) continue;
      const change = review.price(changes);
      if (best !== null && change.total >= best.change.total) continue;
      best = { gives: placeOfSeat(slate, given), to: idOfHolder(slate, former), change };
    }
  }
  return best;
}

function explainHolder(
  slate: CompiledSlate,
  review: ChangeReview,
  seat: number,
  holder: number,
): SeatExplanation['holder'] {
  const leaving = [{ seat, holder: NOBODY }];
  return {
    official: slate.officialIds[holder]!,
    reasons: review.mendedViolations(leaving),
    leaving: review.price(leaving),
  };
}

function lockOf(slate: CompiledSlate, seat: number): SeatExplanation['lock'] {
  const lock = slate.seatLock[seat]!;
  if (lock === SEAT_FREE) return { kind: 'free' };
  return lock === SEAT_KEPT_OPEN
    ? { kind: 'kept-open' }
    : { kind: 'locked', official: slate.officialIds[lock]! };
}

function orderOf(candidate: SeatCandidate): number {
  if (candidate.kind === 'allowed') return 0;
  return candidate.exchange === null ? 2 : 1;
}

function amountOf(candidate: SeatCandidate): number {
  if (candidate.kind === 'allowed') return candidate.change.total;
  return candidate.exchange?.change.total ?? candidate.reasons.length;
}
