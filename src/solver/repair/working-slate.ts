import { type CompiledSlate } from '../compile/compiled-slate';
import { NOBODY, SEAT_KEPT_OPEN } from '../compile/facts';
import { balanceCost } from '../costs/balance';
import { tourCost } from '../costs/travel';
import { crewCost } from '../search/crew';
import { type Holders } from '../tours';

/** How a seat stands during the search for a repair. */
export const AS_PUBLISHED = 0;
/** Decided: it stays with its published holder. */
export const KEPT = 1;
/** Its published holder leaves it, and nobody has it yet. */
export const VACANT = 2;
/** Decided: somebody else holds it, or it stays open. */
export const CHANGED = 3;

/**
 * The published slate on its way to a repaired one. Every step can be taken back, in reverse order, so that
 * a search can walk through thousands of repairs without copying. It may break rules on the way; its cost
 * counts a vacant seat as open.
 */
export class WorkingSlate {
  readonly holders: Holders;
  readonly status: Uint8Array;
  /** Vacant seats. */
  readonly vacant: number[] = [];
  /** Seats with another holder than the published one, or none, in the order in which they were filled. */
  readonly changed: number[] = [];
  /** Officials whose seats differ from the published ones, in the order in which that came about. */
  readonly disturbed: number[] = [];
  /** By official: the seats they hold, ascending. */
  readonly seatsOf: number[][];
  /** Seats left open that need not be. */
  opened = 0;
  cost = 0;
  private readonly changesOf: Int32Array;
  private readonly tour: Int32Array;

  /** `excused[seat]` is 1 where the published holder's leaving is part of what happened, not a disturbance. */
  constructor(
    readonly slate: CompiledSlate,
    readonly published: Holders,
    private readonly excused: Uint8Array,
  ) {
    this.holders = published.slice();
    this.status = new Uint8Array(published.length);
    this.seatsOf = Array.from({ length: slate.officialCount }, () => []);
    published.forEach((holder, seat) => {
      if (holder !== NOBODY) this.seatsOf[holder]!.push(seat);
    });
    this.changesOf = new Int32Array(slate.officialCount);
    this.tour = new Int32Array(2 * slate.gameCount);
  }

  isDisturbed(official: number): boolean {
    return this.changesOf[official]! > 0;
  }

  /** The seat is held as published and nothing has been decided about it. */
  isUndecided(seat: number): boolean {
    const lock = this.slate.seatLock[seat]!;
    const isLockedRightly = lock === SEAT_KEPT_OPEN || (lock >= 0 && lock === this.holders[seat]);
    return this.status[seat] === AS_PUBLISHED && !isLockedRightly;
  }

  /** The published holder leaves the seat. */
  vacate(seat: number): void {
    const holder = this.published[seat]!;
    this.status[seat] = VACANT;
    this.vacant.push(seat);
    if (holder === NOBODY) return;
    if (this.excused[seat] === 0) this.noteChange(holder);
    this.place(seat, NOBODY);
  }

  undoVacate(seat: number, cost: number): void {
    const holder = this.published[seat]!;
    this.status[seat] = AS_PUBLISHED;
    this.vacant.pop();
    if (holder !== NOBODY) {
      this.putBack(seat, holder);
      if (this.excused[seat] === 0) this.forgetChange(holder);
    }
    this.cost = cost;
  }

  /** Somebody takes a vacant seat, or `NOBODY`: it stays open. Returns where it stood among the vacant ones. */
  fill(seat: number, holder: number): number {
    const position = this.vacant.indexOf(seat);
    this.vacant.splice(position, 1);
    this.changed.push(seat);
    this.status[seat] = CHANGED;
    if (holder === NOBODY) {
      if (this.slate.seatLock[seat] !== SEAT_KEPT_OPEN) this.opened++;
    } else {
      this.noteChange(holder);
      this.place(seat, holder);
    }
    return position;
  }

  undoFill(seat: number, position: number, cost: number): void {
    const holder = this.holders[seat]!;
    this.vacant.splice(position, 0, seat);
    this.changed.pop();
    this.status[seat] = VACANT;
    if (holder === NOBODY) {
      if (this.slate.seatLock[seat] !== SEAT_KEPT_OPEN) this.opened--;
    } else {
      this.putBack(seat, NOBODY);
      this.forgetChange(holder);
    }
    this.cost = cost;
  }

  private place(seat: number, holder: number): void {
    const game = seat >> 1;
    const official = holder === NOBODY ? this.holders[seat]! : holder;
    this.cost -= this.costOfGame(game) + this.costOfOfficial(official);
    this.putBack(seat, holder);
    this.cost += this.costOfGame(game) + this.costOfOfficial(official);
  }

  private putBack(seat: number, holder: number): void {
    const before = this.holders[seat]!;
    if (before !== NOBODY) {
      const seats = this.seatsOf[before]!;
      seats.splice(seats.indexOf(seat), 1);
    }
    this.holders[seat] = holder;
    if (holder === NOBODY) return;
    const seats = this.seatsOf[holder]!;
    let at = seats.length;
    while (at > 0 && seats[at - 1]! > seat) at--;
    seats.splice(at, 0, seat);
  }

  private costOfGame(game: number): number {
    return crewCost(this.slate, game, this.holders[2 * game]!, this.holders[2 * game + 1]!);
  }

  /** Balance and tours. */
  private costOfOfficial(official: number): number {
    const { slate, tour } = this;
    const seats = this.seatsOf[official]!;
    let cost = balanceCost(slate, official, seats.length);
    let count = 0;
    for (let i = 0; i < seats.length; i++) {
      const game = seats[i]! >> 1;
      tour[count++] = game;
      const isLastOfDay = i + 1 === seats.length || slate.gameDay[seats[i + 1]! >> 1] !== slate.gameDay[game];
      if (!isLastOfDay) continue;
      cost += tourCost(slate, official, tour, count);
      count = 0;
    }
    return cost;
  }

  private noteChange(official: number): void {
    if (this.changesOf[official]!++ === 0) this.disturbed.push(official);
  }

  private forgetChange(official: number): void {
    if (--this.changesOf[official]! === 0) this.disturbed.pop();
  }
}
