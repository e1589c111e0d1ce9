import { COST_TERMS, type Assignment, type CostBreakdown, type CostTerm, type Violation } from '../answer';
import { compileSlate, type CompiledSlate } from '../compile';
import { checkAnswer } from '../checker/check-answer';
import { priceSlate } from '../costs/price-slate';
import { judgeLocks } from '../rules/judge-slate';
import { writeAnswer } from '../solve/write-answer';
import { type Holders } from '../tours';
import { type SlateProblem } from '../problem';
import { withLock } from './changed-problem';
import { assignmentsOf, idOfHolder, placeOfSeat, type PresentSlate, type SeatPlace } from './present-slate';
import { solveAgain, type SolveAgainOptions, type SolvedSlate } from './solve-again';

/** A seat that changes hands; null is an open seat. */
export interface SeatMove extends SeatPlace {
  readonly from: string | null;
  readonly to: string | null;
}

export type ReoptimisedSeat =
  | {
      readonly kind: 'solved';
      /** Against the present slate, by term. */
      readonly change: CostBreakdown;
      readonly openSeats: number;
      /** Every seat that changes hands, the one asked about first. */
      readonly moves: readonly SeatMove[];
      readonly assignments: readonly Assignment[];
    }
  /** The official cannot be locked into this seat. */
  | { readonly kind: 'forbidden'; readonly reasons: readonly Violation[] };

/** Puts the official into the seat for good and solves again around them, from the present slate. */
export function reoptimiseSeat(
  { problem, slate, holders }: PresentSlate,
  { seat, official }: { readonly seat: number; readonly official: number },
  options: SolveAgainOptions,
): ReoptimisedSeat {
  const locked = withLock(problem, placeOfSeat(slate, seat), slate.officialIds[official]!);
  const compiled = compileSlate(locked);
  const reasons = judgeLocks(compiled);
  if (reasons.length > 0) return { kind: 'forbidden', reasons };
  const solved = solveAgain(compiled, holders, options);
  if (solved === null) return { kind: 'forbidden', reasons: [noPartner(slate, seat, official)] };
  assertSound(locked, compiled, solved);
  return {
    kind: 'solved',
    change: costDifference(solved.cost, priceSlate(slate, holders)),
    openSeats: solved.openSeats,
    moves: listMoves(slate, { before: holders, after: solved.holders }, seat),
    assignments: assignmentsOf(compiled, solved.holders),
  };
}

function noPartner(slate: CompiledSlate, seat: number, official: number): Violation {
  const id = slate.officialIds[official]!;
  const message = `${id} is a minor, and nobody may legally take the other seat`;
  return { rule: 'H8', game: slate.gameIds[seat >> 1]!, officials: [id], message };
}

/** Every seat whose holder differs; those of `first`'s game lead. */
export function listMoves(
  slate: CompiledSlate,
  { before, after }: { readonly before: Holders; readonly after: Holders },
  first: number,
): readonly SeatMove[] {
  const moved = [...before.keys()].filter((seat) => before[seat] !== after[seat]);
  const rank = (seat: number) => (seat === first ? 0 : seat >> 1 === first >> 1 ? 1 : 2);
  moved.sort((a, b) => rank(a) - rank(b) || a - b);
  return moved.map((seat) => ({
    ...placeOfSeat(slate, seat),
    from: idOfHolder(slate, before[seat]!),
    to: idOfHolder(slate, after[seat]!),
  }));
}

/** `after` minus `before`, term by term. */
export function costDifference(after: CostBreakdown, before: CostBreakdown): CostBreakdown {
  const difference = Object.fromEntries(COST_TERMS.map((term) => [term, after[term] - before[term]]));
  return { total: after.total - before.total, ...(difference as Record<CostTerm, number>) };
}

/** @throws when the independent checker finds fault with a slate that the search gave: a bug, never the input's doing. */
export function assertSound(problem: SlateProblem, slate: CompiledSlate, { holders }: SolvedSlate): void {
  const report = checkAnswer(problem, writeAnswer(problem, slate, holders, { bound: null, seconds: 0 }));
  if (report.ok) return;
  const found = [
    ...report.violations.map(({ rule, message }) => `${rule}: ${message}`),
    ...report.mismatches,
  ];
  throw new Error(`a slate solved again is not sound: ${found.join('; ')}`);
}
