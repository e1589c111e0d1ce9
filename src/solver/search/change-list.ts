/** No move changes more seats than this. */
export const CHANGES_MAX = 32;

/**
 * A proposal to the search: a few seats and who should hold each of them instead. Reused from move to
 * move, so that proposing allocates nothing. No seat stands in it twice.
 */
export class ChangeList {
  count = 0;
  readonly seats = new Int32Array(CHANGES_MAX);
  /** The proposed official, or `NOBODY`. */
  readonly holders = new Int32Array(CHANGES_MAX);

  /** Whether two more seats, those of one game, may be added. */
  get hasRoom(): boolean {
    return this.count + 2 <= CHANGES_MAX;
  }

  clear(): void {
    this.count = 0;
  }

  add(seat: number, holder: number): void {
    this.seats[this.count] = seat;
    this.holders[this.count] = holder;
    this.count++;
  }

  has(seat: number): boolean {
    for (let i = 0; i < this.count; i++) if (this.seats[i] === seat) return true;
    return false;
  }
}
