import { mayFollow } from '../compile/compile-follow';
import { type CompiledSlate } from '../compile/compiled-slate';
import { MINUTE_MS, NOBODY } from '../compile/facts';
import { FIT_CHIEF, FIT_UMPIRE } from '../compile/fit-bits';
import { balanceCost } from '../costs/balance';
import { tourCost } from '../costs/travel';
import { backHomeMs, leavesHomeMs } from '../rules/h10-rest';
import { type ChangeList } from './change-list';
import { crewCost, isLegalCrew } from './crew';
import { restReach, type RestReach } from './rest-reach';
import { type TourBook } from './tour-book';
import { type Holders } from '../tours';

/** The slate that moves are priced against, with the prices of its parts. */
export interface PricedSlate {
  readonly slate: CompiledSlate;
  readonly holders: Holders;
  readonly tours: TourBook;
  readonly crewCost: Float64Array;
  readonly gamesHeld: Int32Array;
}

/**
 * Prices a handful of seat changes without making them, cheapest questions first: fitness for the seats,
 * the crews, the officials' balance, and only then their tours and rest. What it finds is kept until the
 * next call, so that an accepted move costs little more than a rejected one.
 */
export class MoveEvaluator {
  private readonly slate: CompiledSlate;
  private readonly reach: RestReach;
  /** The seats of the move at hand: stamp[seat] equals `move`. */
  private readonly stamp: Int32Array;
  private move = 0;
  private readonly games: Int32Array;
  private readonly gameCosts: Float64Array;
  private gameCount = 0;
  private readonly tours: Int32Array;
  private readonly tourCosts: Float64Array;
  private readonly tourLeavesMs: Float64Array;
  private readonly tourBackMs: Float64Array;
  private tourCount = 0;
  /** The games of the tour at hand, ascending. */
  private readonly tour: Int32Array;

  constructor(
    private readonly state: PricedSlate,
    changesMax: number,
  ) {
    this.slate = state.slate;
    this.reach = restReach(state.slate);
    this.stamp = new Int32Array(2 * state.slate.gameCount);
    this.games = new Int32Array(changesMax);
    this.gameCosts = new Float64Array(changesMax);
    // A change concerns the tour that loses the seat and the tour that gains it.
    this.tours = new Int32Array(2 * changesMax);
    this.tourCosts = new Float64Array(2 * changesMax);
    this.tourLeavesMs = new Float64Array(2 * changesMax);
    this.tourBackMs = new Float64Array(2 * changesMax);
    this.tour = new Int32Array(state.slate.gameCount + changesMax);
  }

  /** See `SlateState.evaluate`. */
  evaluate(changes: ChangeList, limit: number): number {
    this.move++;
    for (let i = 0; i < changes.count; i++) {
      const seat = changes.seats[i]!;
      const holder = changes.holders[i]!;
      this.stamp[seat] = this.move;
      if (holder !== NOBODY && !this.isFit(holder, seat)) return Infinity;
    }
    const delta = this.evaluateCrews(changes) + this.evaluateBalance(changes);
    return delta === Infinity ? Infinity : this.evaluateTours(changes, delta, limit);
  }

  /**
   * What the changes would add to the official's own tours and balance, crews left aside; infinite when their
   * tours, load or rest would break a rule. Not to be settled.
   */
  evaluateOfficial(changes: ChangeList, official: number): number {
    this.move++;
    for (let i = 0; i < changes.count; i++) this.stamp[changes.seats[i]!] = this.move;
    let delta = 0;
    for (let i = 0; i < changes.count; i++) {
      // `balanceOf` counts an official once, at the first change that concerns them.
      delta += this.balanceOf(changes, i, official);
    }
    this.tourCount = 0;
    for (let i = 0; i < changes.count; i++) this.listTour(official, changes.seats[i]! >> 1);
    for (let i = 0; i < this.tourCount && delta < Infinity; i++) {
      if (!this.evaluateTour(changes, i)) return Infinity;
      delta += this.tourCosts[i]! - this.state.tours.cost[this.tours[i]!]!;
    }
    return this.keepsRest() ? delta : Infinity;
  }

  /** Whether the two are fit for the seat's game, as a crew and the seat's holder for the seat. */
  suits(seat: number, chief: number, umpire: number): boolean {
    return this.isFit((seat & 1) === 0 ? chief : umpire, seat) && isLegalCrew(this.slate, chief, umpire);
  }

  /** Stores the prices that the last `evaluate` found; the caller makes the changes. */
  settle(): void {
    const { tours, crewCost: costs } = this.state;
    for (let i = 0; i < this.gameCount; i++) costs[this.games[i]!] = this.gameCosts[i]!;
    for (let i = 0; i < this.tourCount; i++) {
      const tour = this.tours[i]!;
      tours.cost[tour] = this.tourCosts[i]!;
      tours.leavesMs[tour] = this.tourLeavesMs[i]!;
      tours.backMs[tour] = this.tourBackMs[i]!;
    }
  }

  private isFit(official: number, seat: number): boolean {
    const bit = (seat & 1) === 0 ? FIT_CHIEF : FIT_UMPIRE;
    return (this.slate.fit[official * this.slate.gameCount + (seat >> 1)]! & bit) !== 0;
  }

  private evaluateCrews(changes: ChangeList): number {
    this.gameCount = 0;
    let delta = 0;
    for (let i = 0; i < changes.count; i++) {
      const seat = changes.seats[i]!;
      const other = this.positionOf(changes, seat ^ 1);
      // Both seats change: the pair was judged with the first of the two.
      if (other >= 0 && other < i) continue;
      const own = changes.holders[i]!;
      const partner = other >= 0 ? changes.holders[other]! : this.state.holders[seat ^ 1]!;
      const chief = (seat & 1) === 0 ? own : partner;
      const umpire = (seat & 1) === 0 ? partner : own;
      if (!isLegalCrew(this.slate, chief, umpire)) return Infinity;
      const game = seat >> 1;
      const cost = crewCost(this.slate, game, chief, umpire);
      this.games[this.gameCount] = game;
      this.gameCosts[this.gameCount++] = cost;
      delta += cost - this.state.crewCost[game]!;
    }
    return delta;
  }

  /** Where the seat stands in the list; −1 when it does not. */
  private positionOf(changes: ChangeList, seat: number): number {
    if (this.stamp[seat] !== this.move) return -1;
    let position = 0;
    while (changes.seats[position] !== seat) position++;
    return position;
  }

  private evaluateBalance(changes: ChangeList): number {
    let delta = 0;
    for (let i = 0; i < changes.count; i++) {
      delta += this.balanceOf(changes, i, changes.holders[i]!);
      delta += this.balanceOf(changes, i, this.state.holders[changes.seats[i]!]!);
    }
    return delta;
  }

  /** The official's change of balance, counted at the first change that concerns them; infinite beyond H4. */
  private balanceOf(changes: ChangeList, at: number, official: number): number {
    if (official === NOBODY) return 0;
    let net = 0;
    for (let i = 0; i < changes.count; i++) {
      const gains = changes.holders[i] === official;
      const loses = this.state.holders[changes.seats[i]!] === official;
      if (i < at && (gains || loses)) return 0;
      if (gains) net++;
      if (loses) net--;
    }
    // The same change may concern the official from both ends only when nothing changes.
    if (net === 0) return 0;
    const held = this.state.gamesHeld[official]!;
    if (net > 0 && held + net > this.slate.maxGames[official]!) return Infinity;
    return balanceCost(this.slate, official, held + net) - balanceCost(this.slate, official, held);
  }

  private evaluateTours(changes: ChangeList, deltaSoFar: number, limit: number): number {
    this.listTours(changes);
    let delta = deltaSoFar;
    for (let i = 0; i < this.tourCount; i++) delta -= this.state.tours.cost[this.tours[i]!]!;
    for (let i = 0; i < this.tourCount; i++) {
      // New tours cost at least nothing, so that the sum can only grow from here.
      if (delta > limit) return Infinity;
      if (!this.evaluateTour(changes, i)) return Infinity;
      delta += this.tourCosts[i]!;
    }
    return this.keepsRest() ? delta : Infinity;
  }

  /** The distinct tours that gain or lose a seat. */
  private listTours(changes: ChangeList): void {
    this.tourCount = 0;
    for (let i = 0; i < changes.count; i++) {
      const game = changes.seats[i]! >> 1;
      this.listTour(changes.holders[i]!, game);
      this.listTour(this.state.holders[changes.seats[i]!]!, game);
    }
  }

  private listTour(official: number, game: number): void {
    if (official === NOBODY) return;
    const tour = this.state.tours.tourOf(official, game);
    for (let i = 0; i < this.tourCount; i++) if (this.tours[i] === tour) return;
    this.tours[this.tourCount++] = tour;
  }

  /** Builds the tour as it would be and prices it; false when H3 or the day's limit of H4 forbids it. */
  private evaluateTour(changes: ChangeList, index: number): boolean {
    const number = this.tours[index]!;
    const official = Math.floor(number / this.slate.dayCount);
    const count = this.buildTour(changes, number, official);
    this.tourCosts[index] = 0;
    this.tourLeavesMs[index] = Infinity;
    this.tourBackMs[index] = -Infinity;
    if (count === 0) return true;
    if (count > this.slate.maxGamesPerDay[official]!) return false;
    for (let i = 1; i < count; i++) {
      if (!mayFollow(this.slate, this.tour[i - 1]!, this.tour[i]!)) return false;
    }
    this.tourCosts[index] = tourCost(this.slate, official, this.tour, count);
    if (this.slate.dayCount === 1) return true;
    for (let i = 0; i < count; i++) {
      const game = this.tour[i]!;
      this.tourLeavesMs[index] = Math.min(this.tourLeavesMs[index], leavesHomeMs(this.slate, official, game));
      this.tourBackMs[index] = Math.max(this.tourBackMs[index], backHomeMs(this.slate, official, game));
    }
    return true;
  }

  private buildTour(changes: ChangeList, number: number, official: number): number {
    const { first, next } = this.state.tours;
    let count = 0;
    for (let seat = first[number]!; seat >= 0; seat = next[seat]!) {
      if (this.stamp[seat] !== this.move) this.tour[count++] = seat >> 1;
    }
    for (let i = 0; i < changes.count; i++) {
      if (changes.holders[i] !== official) continue;
      const game = changes.seats[i]! >> 1;
      if (this.state.tours.tourOf(official, game) !== number) continue;
      let at = count++;
      while (at > 0 && this.tour[at - 1]! > game) {
        this.tour[at] = this.tour[at - 1]!;
        at--;
      }
      this.tour[at] = game;
    }
    return count;
  }

  /** H10: every changed tour against the same official's tours on the other days near enough to matter. */
  private keepsRest(): boolean {
    if (this.slate.dayCount === 1) return true;
    const minRestMs = this.slate.minRestMinutes * MINUTE_MS;
    for (let i = 0; i < this.tourCount; i++) {
      const tour = this.tours[i]!;
      const day = tour % this.slate.dayCount;
      const leavesMs = this.tourLeavesMs[i]!;
      const backMs = this.tourBackMs[i]!;
      if (backMs === -Infinity) continue;
      for (let other = this.reach.firstDay[day]!; other <= this.reach.lastDay[day]!; other++) {
        if (other === day) continue;
        const otherTour = tour - day + other;
        const changed = this.listedTour(otherTour);
        if (other < day) {
          const otherBackMs = changed < 0 ? this.state.tours.backMs[otherTour]! : this.tourBackMs[changed]!;
          if (leavesMs - otherBackMs < minRestMs) return false;
        } else {
          const otherLeavesMs =
            changed < 0 ? this.state.tours.leavesMs[otherTour]! : this.tourLeavesMs[changed]!;
          if (otherLeavesMs - backMs < minRestMs) return false;
        }
      }
    }
    return true;
  }

  private listedTour(tour: number): number {
    for (let i = 0; i < this.tourCount; i++) if (this.tours[i] === tour) return i;
    return -1;
  }
}
