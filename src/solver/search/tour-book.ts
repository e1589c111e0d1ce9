import { type CompiledSlate } from '../compile/compiled-slate';
import { NOBODY } from '../compile/facts';
import { tourCost } from '../costs/travel';
import { backHomeMs, leavesHomeMs } from '../rules/h10-rest';
import { type Holders } from '../tours';

/**
 * Everybody's tours as linked lists of seats, ascending by game, with what each tour costs and when it
 * begins and ends. A tour is numbered official · dayCount + day.
 */
export class TourBook {
  /** The first seat of each tour, −1 when the official is free that day. */
  readonly first: Int32Array;
  /** By seat: the next seat of the same tour, or −1. */
  readonly next: Int32Array;
  readonly cost: Float64Array;
  /** When the official has to leave home for the tour at the latest; +∞ without a tour. */
  readonly leavesMs: Float64Array;
  /** When they are back at the earliest; −∞ without a tour. */
  readonly backMs: Float64Array;

  constructor(private readonly slate: CompiledSlate) {
    const tours = slate.officialCount * slate.dayCount;
    this.first = new Int32Array(tours);
    this.next = new Int32Array(2 * slate.gameCount);
    this.cost = new Float64Array(tours);
    this.leavesMs = new Float64Array(tours);
    this.backMs = new Float64Array(tours);
  }

  reset(holders: Holders): void {
    this.first.fill(-1);
    this.next.fill(-1);
    this.cost.fill(0);
    this.leavesMs.fill(Infinity);
    this.backMs.fill(-Infinity);
    for (let seat = 0; seat < holders.length; seat++) {
      if (holders[seat] !== NOBODY) this.add(holders[seat]!, seat);
    }
    for (let tour = 0; tour < this.first.length; tour++) if (this.first[tour]! >= 0) this.price(tour);
  }

  tourOf(official: number, game: number): number {
    return official * this.slate.dayCount + this.slate.gameDay[game]!;
  }

  add(official: number, seat: number): void {
    const tour = this.tourOf(official, seat >> 1);
    let before = -1;
    let after = this.first[tour]!;
    while (after >= 0 && after < seat) {
      before = after;
      after = this.next[after]!;
    }
    this.next[seat] = after;
    if (before < 0) this.first[tour] = seat;
    else this.next[before] = seat;
  }

  remove(official: number, seat: number): void {
    const tour = this.tourOf(official, seat >> 1);
    if (this.first[tour] === seat) {
      this.first[tour] = this.next[seat]!;
    } else {
      let before = this.first[tour]!;
      while (this.next[before] !== seat) before = this.next[before]!;
      this.next[before] = this.next[seat]!;
    }
    this.next[seat] = -1;
  }

  private price(tour: number): void {
    const official = Math.floor(tour / this.slate.dayCount);
    const games: number[] = [];
    let leavesMs = Infinity;
    let backMs = -Infinity;
    for (let seat = this.first[tour]!; seat >= 0; seat = this.next[seat]!) {
      games.push(seat >> 1);
      leavesMs = Math.min(leavesMs, leavesHomeMs(this.slate, official, seat >> 1));
      backMs = Math.max(backMs, backHomeMs(this.slate, official, seat >> 1));
    }
    this.cost[tour] = tourCost(this.slate, official, games, games.length);
    this.leavesMs[tour] = leavesMs;
    this.backMs[tour] = backMs;
  }
}
