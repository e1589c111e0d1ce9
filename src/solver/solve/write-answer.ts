import { boundMeets, COST_TERMS, type CostBreakdown, type SlateAnswer, type Violation } from '../answer';
import { type CompiledSlate } from '../compile/compiled-slate';
import { NOBODY } from '../compile/facts';
import { priceSlate } from '../costs/price-slate';
import { type SlateProblem } from '../problem';
import { type Holders } from '../tours';

/** A slate in the answer format, games in the order of the problem file. */
export function writeAnswer(
  problem: SlateProblem,
  slate: CompiledSlate,
  holders: Holders,
  { bound, seconds }: { readonly bound: number | null; readonly seconds: number },
): SlateAnswer {
  const gameIndexById = new Map(slate.gameIds.map((id, index) => [id, index]));
  const idOf = (holder: number) => (holder === NOBODY ? null : slate.officialIds[holder]!);
  const cost = priceSlate(slate, holders);
  return {
    format: 'slate-answer/1',
    problem: problem.name,
    assignments: problem.games.map(({ id }) => {
      const game = gameIndexById.get(id)!;
      return { game: id, chief: idOf(holders[2 * game]!), umpire: idOf(holders[2 * game + 1]!) };
    }),
    cost,
    bound,
    seconds: toMilliseconds(seconds),
    status: boundMeets(cost.total, bound) ? 'optimal' : 'feasible',
  };
}

/** The answer when the locks cannot be kept legally; its seats and cost mean nothing. */
export function writeRefusal(
  problem: SlateProblem,
  violations: readonly Violation[],
  seconds: number,
): SlateAnswer {
  const nothing = Object.fromEntries(COST_TERMS.map((term) => [term, 0])) as Omit<CostBreakdown, 'total'>;
  return {
    format: 'slate-answer/1',
    problem: problem.name,
    assignments: problem.games.map(({ id }) => ({ game: id, chief: null, umpire: null })),
    cost: { total: 0, ...nothing },
    bound: null,
    seconds: toMilliseconds(seconds),
    status: 'infeasible',
    lockViolations: violations,
  };
}

function toMilliseconds(seconds: number): number {
  return Math.round(seconds * 1000) / 1000;
}
