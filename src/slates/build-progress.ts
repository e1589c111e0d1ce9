/** The latest figures of a running build; `bound` is a proven lower bound on the total of any legal slate. */
export interface BuildProgress {
  readonly seconds: number;
  readonly totalCost: number;
  readonly bound: number | null;
  readonly openSeats: number;
}
