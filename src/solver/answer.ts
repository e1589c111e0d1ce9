/** The file format `slate-answer/1`: one slate, its price and what is proven about it. */

/** The nine terms of the cost, in the order in which they are listed and added. */
export const COST_TERMS = [
  'open',
  'pairing',
  'travel',
  'balance',
  'teamRepeat',
  'partnerRepeat',
  'overLevel',
  'reluctant',
  'change',
] as const;

export type CostTerm = (typeof COST_TERMS)[number];

/** Each term's amount and their sum. */
export type CostBreakdown = Readonly<Record<CostTerm | 'total', number>>;

/** Permanent ids of the hard rules. */
export type RuleId = 'H1' | 'H2' | 'H3' | 'H4' | 'H5' | 'H6' | 'H7' | 'H8' | 'H9' | 'H10';

/** One broken hard rule, in words that carry their figures. */
export interface Violation {
  readonly rule: RuleId;
  /** Null when no single game is to blame (too many games in the slate). */
  readonly game: string | null;
  readonly officials: readonly string[];
  readonly message: string;
}

/** Who works a game; null is an open seat. */
export interface Assignment {
  readonly game: string;
  readonly chief: string | null;
  readonly umpire: string | null;
}

export interface SlateAnswer {
  readonly format: 'slate-answer/1';
  /** The problem's name. */
  readonly problem: string;
  /** Every game once. */
  readonly assignments: readonly Assignment[];
  readonly cost: CostBreakdown;
  /** No legal slate costs less than this; null when nothing is proven. */
  readonly bound: number | null;
  /** Wall-clock seconds spent; the only field that may differ between two equal runs. */
  readonly seconds: number;
  /** `optimal`: total and bound meet (see `PROOF_TOLERANCE`). `infeasible`: the locks cannot be kept legally. */
  readonly status: 'optimal' | 'feasible' | 'infeasible';
  /** Only when infeasible: what the locks break. */
  readonly lockViolations?: readonly Violation[];
  readonly meta?: unknown;
}

/** A slate is optimal when total − bound ≤ this · max(1, |total|); stated figures may be off by as much. */
export const PROOF_TOLERANCE = 1e-6;

/** Whether `bound` proves `total` optimal. */
export function boundMeets(total: number, bound: number | null): boolean {
  return bound !== null && total - bound <= PROOF_TOLERANCE * Math.max(1, Math.abs(total));
}
