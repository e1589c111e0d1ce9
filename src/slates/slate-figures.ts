import {
  COST_TERMS,
  type CostBreakdown,
  type CostTerm,
  type SlateAnswer,
  type SlateProblem,
} from '../solver';

/** How good an answer is, in figures for people. */
export interface SlateFigures {
  readonly games: number;
  readonly seatsFilled: number;
  /** Without those that stay open on purpose. */
  readonly seatsOpen: number;
  readonly seatsKeptOpen: number;
  readonly cost: CostBreakdown;
  /** Total without open seats: how good the filled ones are. */
  readonly qualityCost: number;
  /** No legal slate costs less; null when nothing is proven. */
  readonly bound: number | null;
  readonly gap: ProvenGap | null;
  /** Kilometres of all tours, home to home; null where travel has no weight, as the cost then does not tell. */
  readonly kilometres: number | null;
  readonly seconds: number;
}

/** How far a slate is, at most, from the best that any legal slate could be. */
export interface ProvenGap {
  /** Total minus bound, at least 0. */
  readonly cost: number;
  /** The same over the quality cost: open seats that cannot be filled would drown it otherwise. Null when the quality cost is 0 and the gap is not. */
  readonly ofQuality: number | null;
}

/** Each cost term in the assignor's words. */
export const costTermWords: Readonly<Record<CostTerm, string>> = {
  open: 'open seats',
  pairing: 'pairings',
  travel: 'driving',
  balance: 'fair shares',
  teamRepeat: 'same team again',
  partnerRepeat: 'same partner again',
  overLevel: 'above the level needed',
  reluctant: 'rather not then',
  change: 'changes to what was published',
};

/** Figures of an answer to a problem. */
export function slateFigures(problem: SlateProblem, answer: SlateAnswer): SlateFigures {
  const locks = new Map(problem.games.map((game) => [game.id, game.locked]));
  const seats = answer.assignments.flatMap(({ game, chief, umpire }) => [
    { holder: chief, isKeptOpen: locks.get(game)?.chief === null },
    { holder: umpire, isKeptOpen: locks.get(game)?.umpire === null },
  ]);
  const open = seats.filter(({ holder }) => holder === null);
  const keptOpen = open.filter(({ isKeptOpen }) => isKeptOpen).length;
  const { travelPerKm } = problem.policy.weights;
  const { cost, bound } = answer;
  return {
    games: answer.assignments.length,
    seatsFilled: seats.length - open.length,
    seatsOpen: open.length - keptOpen,
    seatsKeptOpen: keptOpen,
    cost,
    qualityCost: qualityOf(cost),
    bound,
    gap: bound === null ? null : provenGap(cost, bound),
    kilometres: travelPerKm === 0 ? null : cost.travel / travelPerKm,
    seconds: answer.seconds,
  };
}

function provenGap(cost: CostBreakdown, bound: number): ProvenGap {
  const gap = Math.max(0, cost.total - bound);
  const quality = qualityOf(cost);
  if (gap === 0) return { cost: 0, ofQuality: 0 };
  return { cost: gap, ofQuality: quality === 0 ? null : gap / quality };
}

function qualityOf(cost: CostBreakdown): number {
  return COST_TERMS.reduce((sum, term) => (term === 'open' ? sum : sum + cost[term]), 0);
}
