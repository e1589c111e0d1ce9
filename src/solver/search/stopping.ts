/**
 * How far a run has come and whether it has to end, asked every few thousand steps. The search itself
 * has no clock.
 */
export interface Stopping {
  /** From 0 at the beginning to 1 at the planned end. */
  progress(stepsDone: number): number;
  /** The run has been called off. */
  isCancelled(): boolean;
}

/** Ends after a number of steps, whatever the time. */
export function afterSteps(steps: number, isCancelled: () => boolean = () => false): Stopping {
  return { progress: (done) => (steps <= 0 ? 1 : done / steps), isCancelled };
}

/** Ends at `endSeconds` of the given clock. */
export function afterSeconds(
  nowSeconds: () => number,
  endSeconds: number,
  isCancelled: () => boolean = () => false,
): Stopping {
  const startSeconds = nowSeconds();
  const span = endSeconds - startSeconds;
  return { progress: () => (span <= 0 ? 1 : (nowSeconds() - startSeconds) / span), isCancelled };
}
