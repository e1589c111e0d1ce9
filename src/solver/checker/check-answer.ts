import {
  COST_TERMS,
  PROOF_TOLERANCE,
  boundMeets,
  type CostBreakdown,
  type SlateAnswer,
  type Violation,
} from '../answer';
import { type SlateProblem } from '../problem';
import { type Fault } from '../read/faults';
import { violationsOf } from './judge';
import { priceOf } from './price';
import { readAnswer } from './read-answer';
import { seasonOf, toursOfCrews, type Crew, type Season } from './season';

export interface CheckReport {
  /** Legal, priced as stated, and nothing claimed that is not so. */
  readonly ok: boolean;
  /** What keeps the document from being an answer to this problem at all. */
  readonly faults: readonly Fault[];
  readonly violations: readonly Violation[];
  /** Stated figures that disagree with the recomputed ones. */
  readonly mismatches: readonly string[];
  /** Recomputed; null when there is no slate to price. */
  readonly cost: CostBreakdown | null;
  /** Seats that somebody holds and seats that nobody holds; null like the cost. */
  readonly seats: { readonly filled: number; readonly open: number } | null;
}

/**
 * Judges an answer from the definitions of the formats alone. It shares the formats and their reader with
 * the solver and nothing else: not its rules, costs, travel or arrays.
 */
export function checkAnswer(problem: SlateProblem, document: unknown): CheckReport {
  const read = readAnswer(document, problem);
  const nothing = { violations: [], mismatches: [], cost: null, seats: null };
  if (!read.ok) return { ...nothing, ok: false, faults: read.faults };
  const season = seasonOf(problem);
  if (read.answer.status === 'infeasible') {
    const mismatches = locksMayBeIllegal(season) ? [] : ['status is infeasible, but the locks break no rule'];
    return { ...nothing, ok: mismatches.length === 0, faults: [], mismatches };
  }
  const crews = crewsOf(season, read.answer);
  const tours = toursOfCrews(season, crews);
  const violations = violationsOf(season, crews, tours);
  const cost = priceOf(season, crews, tours);
  const mismatches = mismatchesOf(read.answer, cost);
  const filled = crews.reduce((sum, crew) => sum + (crew.chief ? 1 : 0) + (crew.umpire ? 1 : 0), 0);
  const seats = { filled, open: 2 * crews.length - filled };
  return { ok: violations.length + mismatches.length === 0, faults: [], violations, mismatches, cost, seats };
}

function crewsOf(season: Season, answer: SlateAnswer): readonly Crew[] {
  const officialOf = (id: string | null) => (id === null ? null : season.officials.get(id)!);
  const crewByGame = new Map(
    answer.assignments.map(({ game, chief, umpire }) => [
      game,
      { chief: officialOf(chief), umpire: officialOf(umpire) },
    ]),
  );
  return season.games.map(({ game }) => crewByGame.get(game.id)!);
}

function mismatchesOf(answer: SlateAnswer, cost: CostBreakdown): string[] {
  const found: string[] = [];
  for (const term of ['total', ...COST_TERMS] as const) {
    const slack = PROOF_TOLERANCE * Math.max(1, Math.abs(cost[term]));
    if (Math.abs(answer.cost[term] - cost[term]) <= slack) continue;
    found.push(`cost.${term} is stated as ${answer.cost[term]}, recomputed ${cost[term]}`);
  }
  const slack = PROOF_TOLERANCE * Math.max(1, Math.abs(cost.total));
  if (answer.bound !== null && answer.bound > cost.total + slack) {
    found.push(`bound ${answer.bound} is above the recomputed total ${cost.total}`);
  }
  if (answer.status === 'optimal' && !boundMeets(cost.total, answer.bound)) {
    found.push(`status is optimal, but bound ${answer.bound} does not meet total ${cost.total}`);
  }
  return found;
}

/**
 * Whether the locked seats by themselves break a rule, or a minor is locked beside a free seat, for which
 * there may be no legal partner.
 */
function locksMayBeIllegal(season: Season): boolean {
  const lockedCrews = season.games.map(({ game }): Crew => {
    const holder = (id: string | null | undefined) =>
      id === null || id === undefined ? null : season.officials.get(id)!;
    return { chief: holder(game.locked?.chief), umpire: holder(game.locked?.umpire) };
  });
  const minorBesideFreeSeat = season.games.some(({ game }, index) => {
    const { chief, umpire } = lockedCrews[index]!;
    return (
      (chief?.minor && game.locked?.umpire === undefined) ||
      (umpire?.minor && game.locked?.chief === undefined)
    );
  });
  if (minorBesideFreeSeat) return true;
  return violationsOf(season, lockedCrews, toursOfCrews(season, lockedCrews)).length > 0;
}
