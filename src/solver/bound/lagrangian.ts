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

  constructor(
    readonly slate: CompiledSlate,
    /** Receives every weekend found, for those who collect them; `reducedCost` is at the prices at hand. */
    private readonly onWeekend?: (official: number, pricing: WeekendPricing, reducedCost: number) => void,
  ) {
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
  }

  /** The bound at these prices, in floating point; `safeBound` turns it into one that rounding cannot lift. */
  evaluate(prices: Float64Array): number {
    this.lack.fill(0);
    this.offered.fill(0);
    let sum = this.constant - this.imposeFines(prices);
    for (let official = 0; official < this.slate.officialCount; official++)
      sum += this.offer(official, prices);
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

  private offer(official: number, prices: Float64Array): number {
    const cost = this.pricing.price(official, prices, this.fines);
    const { classCount, officialClass } = this.slate;
    for (let i = 0; i < this.pricing.seatsFound; i++) {
      this.lack[this.pricing.seats[i]! * classCount + officialClass[official]!]! -= 1;
      this.offered[this.pricing.stopsTaken[i]!] = 1;
    }
    this.onWeekend?.(official, this.pricing, cost);
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
  private pace = 0.1;
  private sinceImproved = 0;

  constructor(private readonly lagrangian: Lagrangian) {
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

  /** One evaluation and one step; `target` is the cost of a known slate. Returns the bound at this step. */
  step(target: number): number {
    const { prices, lagrangian } = this;
    const bound = lagrangian.evaluate(prices);
    this.steps++;
    if (bound > this.best) {
      if (bound > this.best + 1e-4 * Math.abs(target - this.best)) this.sinceImproved = 0;
      this.best = bound;
      this.bestPrices.set(prices);
    } else if (++this.sinceImproved >= PATIENCE) {
      this.sinceImproved = 0;
      this.pace = Math.max(PACE_MIN, this.pace * SLOWER);
    }
    const norm = this.deflect();
    if (norm < 1e-12) return bound;
    const stride = (this.pace * Math.max(target - bound, 1e-4 * Math.abs(target))) / norm;
    const { direction } = this;
    for (let i = 0; i < lagrangian.seatPriceCount; i++) prices[i]! += stride * direction[i]!;
    const { most } = lagrangian.partners;
    for (let i = lagrangian.seatPriceCount; i < prices.length; i++) {
      const next = prices[i]! + stride * direction[i]!;
      prices[i] = Math.max(0, Math.min(next, most[i - lagrangian.seatPriceCount]!));
    }
    return bound;
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
const AGAIN_PACE = 0.02;
