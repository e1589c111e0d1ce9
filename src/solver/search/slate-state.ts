import { type CompiledSlate } from '../compile/compiled-slate';
import { NOBODY, SEAT_KEPT_OPEN } from '../compile/facts';
import { balanceCost } from '../costs/balance';
import { type Holders } from '../tours';
import { CHANGES_MAX, type ChangeList } from './change-list';
import { crewCost } from './crew';
import { MoveEvaluator, type PricedSlate } from './move-evaluator';
import { TourBook } from './tour-book';

/**
 * A legal slate that changes step by step. It always knows its cost, the tour of every official on every
 * day and which seats are open; a proposed change is priced without being made.
 */
export class SlateState implements PricedSlate {
  /** The official in each seat, or `NOBODY`. Read only; `apply` writes it. */
  readonly holders: Holders;
  readonly tours: TourBook;
  /** By game: everything the game costs but for its officials' tours and balance. */
  readonly crewCost: Float64Array;
  /** By official: games in the slate. */
  readonly gamesHeld: Int32Array;
  /** Open seats that may be filled, in no particular order: openSeats[0] … openSeats[openCount − 1]. */
  readonly openSeats: Int32Array;
  openCount = 0;
  cost = 0;
  private readonly openPosition: Int32Array;
  private readonly evaluator: MoveEvaluator;

  /** `holders` must be legal; it is copied. */
  constructor(
    readonly slate: CompiledSlate,
    holders: Holders,
  ) {
    const seats = 2 * slate.gameCount;
    this.holders = new Int32Array(seats).fill(NOBODY);
    this.tours = new TourBook(slate);
    this.crewCost = new Float64Array(slate.gameCount);
    this.gamesHeld = new Int32Array(slate.officialCount);
    this.openSeats = new Int32Array(seats);
    this.openPosition = new Int32Array(seats).fill(-1);
    this.evaluator = new MoveEvaluator(this, CHANGES_MAX);
    this.reset(holders);
  }

  /** Takes over another legal slate. */
  reset(holders: Holders): void {
    this.holders.set(holders);
    this.tours.reset(holders);
    this.gamesHeld.fill(0);
    this.openPosition.fill(-1);
    this.openCount = 0;
    holders.forEach((holder, seat) => {
      if (holder !== NOBODY) this.gamesHeld[holder]!++;
      else this.noteOpen(seat);
    });
    for (let game = 0; game < this.slate.gameCount; game++) {
      this.crewCost[game] = crewCost(this.slate, game, holders[2 * game]!, holders[2 * game + 1]!);
    }
    this.cost = this.sumCost();
  }

  /** The cost as the sum of its parts, free of the rounding that many small changes leave behind. */
  sumCost(): number {
    let sum = 0;
    for (const cost of this.crewCost) sum += cost;
    for (const cost of this.tours.cost) sum += cost;
    for (let official = 0; official < this.slate.officialCount; official++) {
      sum += balanceCost(this.slate, official, this.gamesHeld[official]!);
    }
    return sum;
  }

  /**
   * What the changes would add to the cost; infinite when the slate would not be legal any more. Gives up
   * early, with any value above `limit`, once the result cannot come below it.
   */
  evaluate(changes: ChangeList, limit = Infinity): number {
    return this.evaluator.evaluate(changes, limit);
  }

  /** The part of `evaluate` that concerns this official's own tours and balance; crews are left aside. */
  evaluateOfficial(changes: ChangeList, official: number): number {
    return this.evaluator.evaluateOfficial(changes, official);
  }

  /** Whether the two may work the seat's game and the seat's holder may hold it; the other seat is not looked at. */
  suits(seat: number, chief: number, umpire: number): boolean {
    return this.evaluator.suits(seat, chief, umpire);
  }

  /** Makes the changes that `evaluate` has just priced as `delta`. */
  apply(changes: ChangeList, delta: number): void {
    this.evaluator.settle();
    for (let i = 0; i < changes.count; i++) {
      const seat = changes.seats[i]!;
      const before = this.holders[seat]!;
      if (before !== NOBODY) {
        this.tours.remove(before, seat);
        this.gamesHeld[before]!--;
      } else {
        this.noteFilled(seat);
      }
      this.holders[seat] = NOBODY;
    }
    for (let i = 0; i < changes.count; i++) {
      const seat = changes.seats[i]!;
      const after = changes.holders[i]!;
      this.holders[seat] = after;
      if (after !== NOBODY) {
        this.tours.add(after, seat);
        this.gamesHeld[after]!++;
      } else {
        this.noteOpen(seat);
      }
    }
    this.cost += delta;
  }

  private noteOpen(seat: number): void {
    if (this.slate.seatLock[seat] === SEAT_KEPT_OPEN) return;
    this.openPosition[seat] = this.openCount;
    this.openSeats[this.openCount++] = seat;
  }

  private noteFilled(seat: number): void {
    const position = this.openPosition[seat]!;
    const last = this.openSeats[--this.openCount]!;
    this.openSeats[position] = last;
    this.openPosition[last] = position;
    this.openPosition[seat] = -1;
  }
}
