import { type CompiledSlate } from '../compile';
import { listCrewChoices, type CrewChoices } from './crew-choice';
import { detourSlackMetres } from './detour-slack';
import { listPartnerRows, type PartnerRows } from './partner-rows';
import { listStops, publishedSeatsCost, type Stops } from './stops';
import { WeekendPricing } from './weekend-pricing';

/**
 * The Lagrangian relaxation of a slate. An official offers whole weekends, a game asks for a crew of two
 * classes of officials (level, minor), and a price for each seat and class replaces the demand that what is
 * offered is what is asked for. At any prices the sum of the cheapest weekend of every official and the
 * cheapest crew of every game is a lower bound on the cost of every legal slate. Pairs that should not meet
 * (recent partners, avoided partners) are fined where both offer themselves for one game.
 *
 * Held, Wolfe, Crowder: Validation of subgradient optimization, Mathematical Programming 6 (1974), for the
 * method; the steps are Polyak's, the direction is deflected as in Camerini, Fratta, Maffioli (1975).
 */
export class Lagrangian {
  readonly stops: Stops;
  readonly pricing: WeekendPricing;
  readonly choices: CrewChoices;
  readonly partners: PartnerRows;
  readonly officialOfStop: Int32Array;
  /** Prices of seats by class come first, multipliers of partner rows after them. */
  readonly seatPriceCount: number;
  readonly priceCount: number;
  /** Asked minus offered at the prices evaluated last: the direction in which the bound rises. */
  readonly lack: Float64Array;
  /** The sum of the multipliers on each stop, at the prices evaluated last. */
  readonly fines: Float64Array;
  /** Crews found at the prices evaluated last, as an index into `choices`. */
  readonly crewOfGame: Int32Array;
  private readonly offered: Uint8Array;
  private readonly constant: number;

  // The weekend found last for each official: its cost without prices and fines, where the prices of its
  // seats stand, and its stops.
  private readonly weekendCost: Float64Array;
  private readonly weekendLength: Int32Array;
  private readonly weekendStart: Int32Array;
  private readonly weekendPrices: Int32Array;
  private readonly weekendStops: Int32Array;

  constructor(readonly slate: CompiledSlate) {
    this.stops = listStops(slate);
    this.pricing = new WeekendPricing(slate, this.stops, detourSlackMetres(slate));
    this.choices = listCrewChoices(slate);
    this.partners = listPartnerRows(slate, this.stops);
    this.officialOfStop = new Int32Array(this.stops.game.length);
    for (let official = 0; official < slate.officialCount; official++)
      this.officialOfStop.fill(official, this.stops.start[official], this.stops.start[official + 1]);
    this.seatPriceCount = 2 * slate.gameCount * slate.classCount;
    this.priceCount = this.seatPriceCount + this.partners.count;
    this.lack = new Float64Array(this.priceCount);
    this.fines = new Float64Array(this.stops.game.length);
    this.offered = new Uint8Array(this.stops.game.length);
    this.crewOfGame = new Int32Array(slate.gameCount);
    this.constant = publishedSeatsCost(slate);
    this.weekendCost = new Float64Array(slate.officialCount);
    this.weekendLength = new Int32Array(slate.officialCount);
    this.weekendStart = new Int32Array(slate.officialCount + 1);
    for (let official = 0; official < slate.officialCount; official++) {
      const most = Math.min(
        slate.maxGames[official]!,
        this.stops.start[official + 1]! - this.stops.start[official]!,
      );
      this.weekendStart[official + 1] = this.weekendStart[official]! + most;
    }
    this.weekendPrices = new Int32Array(this.weekendStart[slate.officialCount]!);
    this.weekendStops = new Int32Array(this.weekendStart[slate.officialCount]!);
  }

  /** The bound at these prices, in floating point; `safeBound` turns it into one that rounding cannot lift. */
  evaluate(prices: Float64Array): number {
    return this.evaluatePart(prices, 0, 1);
  }

  /**
   * The same with every `parts`-th official only, from number `part`, looking for the best weekend; the
   * others offer again what they offered last. The value is no bound then (theirs may not be the cheapest
   * weekends any more), but the direction is nearly as good at a fraction of the work: the surrogate
   * subgradient of Zhao, Luh, Wang, Journal of Optimization Theory and Applications 100 (1999).
   */
  evaluatePart(prices: Float64Array, part: number, parts: number): number {
    this.lack.fill(0);
    this.offered.fill(0);
    let sum = this.constant - this.imposeFines(prices);
    for (let official = 0; official < this.slate.officialCount; official++) {
      if (official % parts === part) this.findWeekend(official, prices);
      sum += this.offer(official, prices);
    }
    for (let game = 0; game < this.slate.gameCount; game++) sum += this.ask(game, prices);
    this.judgePartners(prices);
    return sum;
  }

  private imposeFines(prices: Float64Array): number {
    const { stopA, stopB, count } = this.partners;
    this.fines.fill(0);
    let sum = 0;
    for (let row = 0, at = this.seatPriceCount; row < count; row++, at++) {
      const multiplier = prices[at]!;
      if (multiplier === 0) continue;
      this.fines[stopA[row]!]! += multiplier;
      this.fines[stopB[row]!]! += multiplier;
      sum += multiplier;
    }
    return sum;
  }

  private judgePartners(prices: Float64Array): void {
    const { stopA, stopB, count } = this.partners;
    for (let row = 0, at = this.seatPriceCount; row < count; row++, at++) {
      const excess = this.offered[stopA[row]!]! + this.offered[stopB[row]!]! - 1;
      if (excess > 0 || (excess < 0 && prices[at]! > 0)) this.lack[at] = excess;
    }
  }

  private findWeekend(official: number, prices: Float64Array): void {
    const { pricing } = this;
    let ownCost = pricing.price(official, prices, this.fines);
    const { classCount, officialClass } = this.slate;
    const at = this.weekendStart[official]!;
    for (let i = 0; i < pricing.seatsFound; i++) {
      const priceAt = pricing.seats[i]! * classCount + officialClass[official]!;
      const stop = pricing.stopsTaken[i]!;
      this.weekendPrices[at + i] = priceAt;
      this.weekendStops[at + i] = stop;
      ownCost += prices[priceAt]! - this.fines[stop]!;
    }
    this.weekendLength[official] = pricing.seatsFound;
    this.weekendCost[official] = ownCost;
  }

  /** Offers the weekend found last for the official; its reduced cost at these prices. */
  private offer(official: number, prices: Float64Array): number {
    let cost = this.weekendCost[official]!;
    const at = this.weekendStart[official]!;
    for (let i = at; i < at + this.weekendLength[official]!; i++) {
      const priceAt = this.weekendPrices[i]!;
      const stop = this.weekendStops[i]!;
      cost += this.fines[stop]! - prices[priceAt]!;
      this.lack[priceAt]! -= 1;
      this.offered[stop] = 1;
    }
    return cost;
  }

  private ask(game: number, prices: Float64Array): number {
    const { start, chiefClass, umpireClass, cost, openCost } = this.choices;
    const nobody = this.slate.classCount;
    const chiefAt = 2 * game * nobody;
    const umpireAt = chiefAt + nobody;
    let best = Infinity;
    let bestChoice = start[game]!;
    for (let choice = start[game]!; choice < start[game + 1]!; choice++) {
      const chief = chiefClass[choice]!;
      const umpire = umpireClass[choice]!;
      const total =
        cost[choice]! +
        openCost[choice]! +
        (chief === nobody ? 0 : prices[chiefAt + chief]!) +
        (umpire === nobody ? 0 : prices[umpireAt + umpire]!);
      if (total < best) {
        best = total;
        bestChoice = choice;
      }
    }
    this.crewOfGame[game] = bestChoice;
    const chief = chiefClass[bestChoice]!;
    const umpire = umpireClass[bestChoice]!;
    if (chief !== nobody) this.lack[chiefAt + chief]! += 1;
    if (umpire !== nobody) this.lack[umpireAt + umpire]! += 1;
    return best;
  }
}

/**
 * A bound that stays one whatever rounding did. The sum has fewer than a thousand terms a person or game,
 * each wrong by less than 2⁻⁵² of magnitudes up to `scale`; a billionth of it is a wide margin.
 */
export function safeBound(bound: number, scale: number): number {
  return bound - 1e-9 * Math.max(1, Math.abs(bound), scale);
}

/** Prices that rise towards the best bound. */
export class PriceAscent {
  readonly prices: Float64Array;
  /** Prices of the best bound so far. */
  readonly bestPrices: Float64Array;
  best = -Infinity;
  steps = 0;
  private readonly direction: Float64Array;
  private readonly parts: number;
  private pace = 0.1;
  private sinceImproved = 0;

  constructor(private readonly lagrangian: Lagrangian) {
    this.parts = Math.max(
      1,
      Math.min(PARTS_MAX, Math.floor(lagrangian.slate.officialCount / OFFICIALS_A_PART)),
    );
    this.prices = new Float64Array(lagrangian.priceCount);
    this.bestPrices = new Float64Array(lagrangian.priceCount);
    this.direction = new Float64Array(lagrangian.priceCount);
  }

  /** Sets out once more from the best prices, with longer steps. */
  again(): PriceAscent {
    const next = new PriceAscent(this.lagrangian);
    next.prices.set(this.bestPrices);
    next.bestPrices.set(this.bestPrices);
    next.best = this.best;
    next.pace = AGAIN_PACE;
    return next;
  }

  /** The steps have become too short to matter. */
  get settled(): boolean {
    return this.pace <= PACE_MIN;
  }

  /**
   * One evaluation and one step; `target` is the cost of a known slate. Large slates are evaluated in parts,
   * and as a whole, for the bound, only from time to time.
   */
  step(target: number): void {
    const { lagrangian, parts } = this;
    const whole = parts === 1 || this.steps % (WHOLE_EVERY * parts) === 0;
    const value = whole
      ? lagrangian.evaluate(this.prices)
      : lagrangian.evaluatePart(this.prices, this.steps % parts, parts);
    this.steps++;
    if (whole) this.judge(value, target);
    const norm = this.deflect();
    if (norm >= 1e-12) this.walk((this.pace * Math.max(target - value, 1e-4 * Math.abs(target))) / norm);
  }

  /** Keeps the best prices, and shortens the steps when they have not helped for a while. */
  private judge(bound: number, target: number): void {
    if (bound > this.best) {
      if (bound > this.best + 1e-4 * Math.abs(target - this.best)) this.sinceImproved = 0;
      this.best = bound;
      this.bestPrices.set(this.prices);
      return;
    }
    this.sinceImproved++;
    if (this.sinceImproved < (this.parts === 1 ? PATIENCE : PATIENCE_IN_PARTS)) return;
    this.sinceImproved = 0;
    this.pace = Math.max(PACE_MIN, this.pace * (this.parts === 1 ? SLOWER : SLOWER_IN_PARTS));
  }

  private walk(stride: number): void {
    const { prices, direction } = this;
    const { seatPriceCount, partners } = this.lagrangian;
    for (let i = 0; i < seatPriceCount; i++) prices[i]! += stride * direction[i]!;
    for (let i = seatPriceCount; i < prices.length; i++) {
      const next = prices[i]! + stride * direction[i]!;
      prices[i] = Math.max(0, Math.min(next, partners.most[i - seatPriceCount]!));
    }
  }

  private deflect(): number {
    const { direction } = this;
    const { lack } = this.lagrangian;
    let norm = 0;
    for (let i = 0; i < direction.length; i++) {
      const next = NEW_SHARE * lack[i]! + (1 - NEW_SHARE) * direction[i]!;
      direction[i] = next;
      norm += next * next;
    }
    return norm;
  }
}

/** How much of the new direction enters each step, and when and how far the steps are shortened. */
const NEW_SHARE = 0.1;
const PATIENCE = 20;
const SLOWER = 0.8;
const PACE_MIN = 3e-4;
/** Large slates: how many parts, how often all of them at once, and the patience counted in such times. */
const OFFICIALS_A_PART = 100;
const PARTS_MAX = 24;
const WHOLE_EVERY = 3;
const PATIENCE_IN_PARTS = 1;
const SLOWER_IN_PARTS = 0.7;
const AGAIN_PACE = 0.02;
