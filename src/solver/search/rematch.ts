import { NOBODY } from '../compile/facts';
import { solveAssignment } from './assignment';
import { type BestSlate } from './best-slate';
import { ChangeList } from './change-list';
import { crewCost } from './crew';
import { type Neighbourhood } from './moves/neighbourhood';

/** Officials whose days are dealt anew at once. */
const ROWS_MAX = 24;
/** Of these, so many at least who have nothing to give yet. */
const FREE_ROWS_MAX = 8;
const DRAWS_MAX = 120;
/** Stands for what is not legal; far above any sum of weights that still tells cents apart. */
const FORBIDDEN = 1e12;
const GAIN_MIN = 1e-7;

/** What an official does on one day from a game on: seats, ascending; empty for somebody who is free. */
interface Part {
  readonly official: number;
  readonly seats: readonly number[];
}

/**
 * A neighbourhood too large to draw from: on one day, from one game on, what several officials do is dealt
 * anew among them in the best of all n! ways. No two of them share a game, so that who works beside whom
 * does not matter and every choice of official and part has a price of its own: an assignment problem.
 * Long exchanges that no short chain of moves would find come out of it at once.
 */
export class Rematch {
  private readonly changes = new ChangeList();
  private readonly cost = new Float64Array(ROWS_MAX * ROWS_MAX);
  private readonly columnOfRow = new Int32Array(ROWS_MAX);
  private readonly isTaken = new Set<number>();

  constructor(private readonly around: Neighbourhood) {}

  /** Deals once and takes what is cheaper; true when something was. */
  improve(best: BestSlate): boolean {
    const parts = this.drawParts();
    const n = parts.length;
    if (n < 3) return false;
    for (let row = 0; row < n; row++) {
      for (let column = 0; column < n; column++) {
        const price = row === column ? 0 : this.priceOf(parts[row]!, parts[column]!);
        this.cost[row * n + column] = price === Infinity ? FORBIDDEN : price;
      }
    }
    solveAssignment(n, this.cost, this.columnOfRow);
    return this.applyCycles(parts, best);
  }

  /** Officials around a random seat who share no game from the cut on, then some who are free by then. */
  private drawParts(): Part[] {
    const { around } = this;
    const { state, random, nearby } = around;
    const seat = around.drawSeat();
    const game = seat >> 1;
    const cut = random.unit() < 0.4 ? state.slate.dayStart[state.slate.gameDay[game]!]! : game;
    const games = nearby.of(game);
    const parts: Part[] = [];
    this.isTaken.clear();
    const officials = new Set<number>();
    this.addPart(parts, officials, state.holders[seat]!, game, cut);
    for (
      let draw = 0;
      draw < DRAWS_MAX && parts.length < ROWS_MAX - FREE_ROWS_MAX && games.length > 0;
      draw++
    ) {
      const other = games[random.below(games.length)]!;
      this.addPart(parts, officials, state.holders[2 * other + random.below(2)]!, game, cut);
    }
    const busy = parts.length;
    if (busy === 0) return parts;
    for (let draw = 0; draw < DRAWS_MAX && parts.length < Math.min(ROWS_MAX, busy + FREE_ROWS_MAX); draw++) {
      const { seats } = parts[random.below(busy)]!;
      if (seats.length === 0) continue;
      const official = around.candidates.draw(seats[random.below(seats.length)]!, random);
      this.addPart(parts, officials, official, game, cut);
    }
    return parts;
  }

  private addPart(
    parts: Part[],
    officials: Set<number>,
    official: number,
    dayGame: number,
    cut: number,
  ): void {
    const { state, region } = this.around;
    if (official === NOBODY || officials.has(official) || region.isOfficialMovable[official] === 0) return;
    const { tours } = state;
    const seats: number[] = [];
    for (let seat = tours.first[tours.tourOf(official, dayGame)]!; seat >= 0; seat = tours.next[seat]!) {
      if (seat < 2 * cut) continue;
      if (!this.around.isMovable(seat) || this.isTaken.has(seat >> 1)) return;
      seats.push(seat);
    }
    for (const seat of seats) this.isTaken.add(seat >> 1);
    officials.add(official);
    parts.push({ official, seats });
  }

  /** What it would cost if the official gave up their own part and took the other one. */
  private priceOf(own: Part, other: Part): number {
    const { changes } = this;
    const { state } = this.around;
    const { slate, holders } = state;
    changes.clear();
    if (own.seats.length + other.seats.length > changes.holders.length) return Infinity;
    let crews = 0;
    for (const seat of other.seats) {
      const partner = holders[seat ^ 1]!;
      const isChiefSeat = (seat & 1) === 0;
      const chief = isChiefSeat ? own.official : partner;
      const umpire = isChiefSeat ? partner : own.official;
      if (!state.suits(seat, chief, umpire)) return Infinity;
      crews += crewCost(slate, seat >> 1, chief, umpire) - state.crewCost[seat >> 1]!;
      changes.add(seat, own.official);
    }
    for (const seat of own.seats) changes.add(seat, NOBODY);
    return crews + state.evaluateOfficial(changes, own.official);
  }

  /** Each cycle of the deal is a move of its own, and none of them makes the slate dearer. */
  private applyCycles(parts: readonly Part[], best: BestSlate): boolean {
    const { changes } = this;
    const { state } = this.around;
    const isDone = new Uint8Array(parts.length);
    let improved = false;
    for (let first = 0; first < parts.length; first++) {
      changes.clear();
      let seats = 0;
      for (let row = first; isDone[row] === 0; row = this.columnOfRow[row]!) {
        isDone[row] = 1;
        const taken = parts[this.columnOfRow[row]!]!;
        seats += taken.seats.length;
        if (taken.official === parts[row]!.official || seats > changes.holders.length) continue;
        for (const seat of taken.seats) changes.add(seat, parts[row]!.official);
      }
      if (changes.count === 0 || seats > changes.holders.length) continue;
      const delta = state.evaluate(changes, -GAIN_MIN);
      if (delta > -GAIN_MIN) continue;
      state.apply(changes, delta);
      best.noteChanges(changes);
      improved = true;
    }
    return improved;
  }
}
