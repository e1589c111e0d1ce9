/** How a run stands; all figures are those of the best slate so far. */
export interface SolveProgress {
  /** Seconds since the run was said to have started. */
  readonly seconds: number;
  readonly cost: number;
  readonly openSeats: number;
  /** Proven lower bound on every legal slate's cost; null while there is none. */
  readonly bound: number | null;
}

export interface SolveOptions {
  /** The caller's clock, in seconds from any origin. */
  readonly nowSeconds: () => number;
  /** When the time allowed begins to count, on that clock; default: when `solveSlate` is called. */
  readonly startedAtSeconds?: number;
  /** The answer is ready after about this long. Default: `defaultSeconds`. Ignored when `steps` is given. */
  readonly seconds?: number;
  /** Steps of search for each thread, instead of a time; the answer then depends on no clock. */
  readonly steps?: number;
  /** Any whole number; default 1. */
  readonly seed?: number;
  /** Worker threads; 1 (default) searches in the calling thread, in short pieces. */
  readonly threads?: number;
  /** Called about five times a second. */
  readonly onProgress?: (progress: SolveProgress) => void;
  /** Ends the run within a fraction of a second, with the best slate so far. */
  readonly signal?: AbortSignal;
}

/** Enough for a good slate of this size on a small machine: 10 seconds for 40 games, a minute for 1,000. */
export function defaultSeconds(gameCount: number): number {
  if (gameCount <= 50) return 10;
  if (gameCount <= 300) return 30;
  return gameCount <= 2000 ? 60 : 300;
}
