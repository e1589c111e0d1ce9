import { type CompiledSlate } from '../compile';
import { listCrewChoices, type CrewChoices } from './crew-choice';
import { detourSlackMetres } from './detour-slack';
import { listStops, publishedSeatsCost, type Stops } from './stops';
import { WeekendPricing, type SeatPrices } from './weekend-pricing';

/**
 * The Lagrangian relaxation of a slate. An official offers whole weekends, a game asks for a crew of two
 * classes of officials (level, minor), and a price for each seat and class replaces the demand that what is
 * offered is what is asked for. At any prices the sum of the cheapest weekend of every official and the
 * cheapest crew of every game is a lower bound on the cost of every legal slate; partner terms and avoided
 * partners are left out, which can only lower it.
 *
 * Held, Wolfe, Crowder: Validation of subgradient optimization, Mathematical Programming 6 (1974), for the
 * method; the steps are Polyak's, the direction is deflected as in Camerini, Fratta, Maffioli (1975).
 */
export class Lagrangian {
  readonly stops: Stops;
  readonly pricing: WeekendPricing;
  readonly choices: CrewChoices;
  readonly priceCount: number;
  /** Asked minus offered at the prices evaluated last: the direction in which the bound rises. */
  readonly lack: Float64Array;
  /** Weekends and crews found at the prices evaluated last. */
  readonly crewOfGame: Int32Array;
  private readonly constant: number;

  constructor(
    readonly slate: CompiledSlate,
    /** Receives every weekend found, for those who collect them; `reducedCost` is at the prices at hand. */
    private readonly onWeekend?: (official: number, pricing: WeekendPricing, reducedCost: number) => void,
  ) {
    this.stops = listStops(slate);
    this.pricing = new WeekendPricing(slate, this.stops, detourSlackMetres(slate));
    this.choices = listCrewChoices(slate);
    this.priceCount = 2 * slate.gameCount * slate.classCount;
    this.lack = new Float64Array(this.priceCount);
    this.crewOfGame = new Int32Array(slate.gameCount);
    this.constant = publishedSeatsCost(slate);
  }

  /** The bound at these prices, in floating point; `safeBound` turns it into one that rounding cannot lift. */
  evaluate(prices: SeatPrices): number {
    this.lack.fill(0);
    let sum = this.constant;
    for (let official = 0; official < this.slate.officialCount; official++)
      sum += this.offer(official, prices);
    for (let game = 0; game < this.slate.gameCount; game++) sum += this.ask(game, prices);
    return sum;
  }

  private offer(official: number, prices: SeatPrices): number {
    const cost = this.pricing.price(official, prices);
    const { classCount, officialClass } = this.slate;
    for (let i = 0; i < this.pricing.seatsFound; i++)
      this.lack[this.pricing.seats[i]! * classCount + officialClass[official]!]! -= 1;
    this.onWeekend?.(official, this.pricing, cost);
    return cost;
  }

  private ask(game: number, prices: SeatPrices): number {
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
  private pace = 1;
  private sinceImproved = 0;

  constructor(
    private readonly lagrangian: Lagrangian,
    start?: Float64Array,
  ) {
    this.prices = start?.slice() ?? new Float64Array(lagrangian.priceCount);
    this.bestPrices = this.prices.slice();
    this.direction = new Float64Array(lagrangian.priceCount);
  }

  /** One evaluation and one step; `target` is the cost of a known slate. Returns the bound at this step. */
  step(target: number): number {
    const { prices, direction, lagrangian } = this;
    const bound = lagrangian.evaluate(prices);
    this.steps++;
    if (bound > this.best) {
      if (bound > this.best + 1e-4 * Math.max(1, Math.abs(target - this.best))) this.sinceImproved = 0;
      this.best = bound;
      this.bestPrices.set(prices);
    } else if (++this.sinceImproved >= 20) {
      this.sinceImproved = 0;
      this.pace = Math.max(0.005, this.pace * 0.7);
      prices.set(this.bestPrices);
      direction.fill(0);
      return bound;
    }
    let norm = 0;
    for (let i = 0; i < direction.length; i++) {
      const next = 0.3 * lagrangian.lack[i]! + 0.7 * direction[i]!;
      direction[i] = next;
      norm += next * next;
    }
    if (norm < 1e-12) return bound;
    const stride = (this.pace * Math.max(target - bound, 1e-3 * Math.abs(target))) / norm;
    for (let i = 0; i < direction.length; i++) prices[i]! += stride * direction[i]!;
    return bound;
  }
}
