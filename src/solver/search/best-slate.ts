import { type Holders } from '../tours';
import { type ChangeList } from './change-list';

/**
 * Remembers the cheapest slate of a run. Only seats that changed since the last record are copied, so
 * that a run of small improvements on a large slate stays cheap.
 */
export class BestSlate {
  readonly holders: Holders;
  private readonly changedSeats: Int32Array;
  private readonly isChanged: Uint8Array;
  private changedCount = 0;

  constructor(
    current: Holders,
    public cost: number,
    public openSeats: number,
  ) {
    this.holders = current.slice();
    this.changedSeats = new Int32Array(current.length);
    this.isChanged = new Uint8Array(current.length);
  }

  noteChanges(changes: ChangeList): void {
    for (let i = 0; i < changes.count; i++) {
      const seat = changes.seats[i]!;
      if (this.isChanged[seat] === 1) continue;
      this.isChanged[seat] = 1;
      this.changedSeats[this.changedCount++] = seat;
    }
  }

  record(current: Holders, cost: number, openSeats: number): void {
    for (let i = 0; i < this.changedCount; i++) {
      const seat = this.changedSeats[i]!;
      this.holders[seat] = current[seat]!;
      this.isChanged[seat] = 0;
    }
    this.changedCount = 0;
    this.cost = cost;
    this.openSeats = openSeats;
  }
}
