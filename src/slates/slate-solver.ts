import type { SlateAnswer, SlateProblem, SolveProgress } from '../solver';

export interface SlateSolverOptions {
  readonly seconds: number;
  readonly seed: number;
  /** Ends the run soon, with the best slate so far. */
  readonly signal: AbortSignal;
  readonly onProgress: (progress: SolveProgress) => void;
}

/** Where a slate problem is solved: in a thread of its own, or in a test in the test's own. */
export interface SlateSolver {
  solve(problem: SlateProblem, options: SlateSolverOptions): Promise<SlateAnswer>;
}
