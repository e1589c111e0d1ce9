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
