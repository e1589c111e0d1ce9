import { type CompiledSlate, mayFollow } from '../compile';
import { type Stops } from '../bound/stops';
import { type SeatPrices } from '../bound/weekend-pricing';
import { type Holders } from '../tours';

/** Whole legal weekends of officials: weekend w is `official[w]` taking seats seatStart[w] … seatStart[w + 1] − 1. */
export interface Weekends {
  readonly official: number[];
  readonly seatStart: number[];
  /** Seats (2·game + side), ascending within a weekend. */
  readonly seats: number[];
  /** Travel, balance and the seats' own costs, kept published seats earning the price of a change back. */
  readonly cost: number[];
  /** Cost minus the prices of its seats plus the fines on its stops. */
  readonly reducedCost: number[];
}

export function noWeekends(): Weekends {
  return { official: [], seatStart: [0], seats: [], cost: [], reducedCost: [] };
}

/**
 * Lists every legal weekend of each official whose reduced cost is at most that official's least one plus
 * `gap`. When the prices prove a bound and `gap` is the distance from it to a known slate, then every slate
 * that is cheaper than the known one is made of weekends of this list (reduced-cost fixing).
 */
export class WeekendEnumeration {
  private readonly travelPerMetre: number;
  private first = 0;
  private end = 0;
  private official = 0;
  private limit = 0;
  private mostGames = 0;
  /** At (stop − first) · (mostGames + 1) + games so far: least cost still to come after that stop. */
  private toCome: Float64Array = new Float64Array(0);
  private readonly path: number[] = [];
  private out: Weekends = noWeekends();
  private most = 0;

  constructor(
    private readonly slate: CompiledSlate,
    private readonly stops: Stops,
    private readonly prices: SeatPrices,
    /** By stop, for either seat: taken off what the seat earns. */
    private readonly fines: Float64Array,
  ) {
    this.travelPerMetre = slate.weights.travelPerKm / 1000;
  }

  /** Adds the weekends of one official to `out`; false when there would be more than `most` in all. */
  list(official: number, limit: number, out: Weekends, most: number): boolean {
    this.begin(official);
    this.limit = limit;
    this.out = out;
    this.most = most;
    if (this.balance(0) <= limit && !this.keep(this.balance(0), 0)) return false;
    return this.mostGames === 0 || this.startDay(-1, 0, { cost: 0, earned: 0 });
  }

  /** A reduced cost that no weekend of the official is below. */
  leastCost(official: number): number {
    this.begin(official);
    let least = this.balance(0);
    if (this.mostGames === 0) return least;
    for (let stop = this.first; stop < this.end; stop++) {
      const toCome = this.toCome[(stop - this.first) * (this.mostGames + 1) + 1]!;
      least = Math.min(least, this.stops.outwardCost[stop]! + this.leastWeight(stop) + toCome);
    }
    return least;
  }

  /** Reduced cost of the weekend that the official has in a slate; all its seats must be among the stops. */
  costOf(official: number, holders: Holders): number {
    this.begin(official);
    let cost = 0;
    let games = 0;
    let last = -1;
    for (let stop = this.first; stop < this.end; stop++) {
      const game = this.stops.game[stop]!;
      const side = holders[2 * game] === official ? 0 : holders[2 * game + 1] === official ? 1 : -1;
      if (side < 0) continue;
      cost += this.stops.seatCost[2 * stop + side]! - this.price(stop, side);
      if (last >= 0 && this.sameDay(last, stop)) cost += this.wayCost(last, stop);
      else cost += (last < 0 ? 0 : this.stops.homewardCost[last]!) + this.stops.outwardCost[stop]!;
      last = stop;
      games++;
    }
    return cost + (last < 0 ? 0 : this.stops.homewardCost[last]!) + this.balance(games);
  }

  private begin(official: number): void {
    this.official = official;
    this.first = this.stops.start[official]!;
    this.end = this.stops.start[official + 1]!;
    this.mostGames = Math.min(this.slate.maxGames[official]!, this.end - this.first);
    if (this.slate.maxGamesPerDay[official] === 0) this.mostGames = 0;
    this.path.length = 0;
    this.computeToCome();
  }

  private balance(games: number): number {
    const distance = this.slate.priorGames[this.official]! + games - this.slate.targetGames[this.official]!;
    return this.slate.weights.balance * distance * distance;
  }

  private price(stop: number, side: number): number {
    const { classCount, officialClass } = this.slate;
    const at = (2 * this.stops.game[stop]! + side) * classCount + officialClass[this.official]!;
    return this.prices[at]! - this.fines[stop]!;
  }

  private leastWeight(stop: number): number {
    return Math.min(
      this.stops.seatCost[2 * stop]! - this.price(stop, 0),
      this.stops.seatCost[2 * stop + 1]! - this.price(stop, 1),
    );
  }

  private wayCost(from: number, to: number): number {
    const { gameVenue, venueCount, betweenVenues } = this.slate;
    const { game } = this.stops;
    return (
      this.travelPerMetre *
      betweenVenues.metres[gameVenue[game[from]!]! * venueCount + gameVenue[game[to]!]!]!
    );
  }

  private sameDay(a: number, b: number): boolean {
    const { game } = this.stops;
    return this.slate.gameDay[game[a]!] === this.slate.gameDay[game[b]!];
  }

  /** Optimistic: neither rest nor the limit a day is looked at. */
  private computeToCome(): void {
    const { first, end, mostGames, stops } = this;
    const width = mostGames + 1;
    if (this.toCome.length < (end - first) * width) this.toCome = new Float64Array(2 * (end - first) * width);
    for (let i = end - 1; i >= first; i--) {
      for (let games = 1; games <= mostGames; games++) {
        let least = stops.homewardCost[i]! + this.balance(games);
        for (let h = i + 1; games < mostGames && h < end; h++) {
          let way: number;
          if (!this.sameDay(i, h)) way = stops.homewardCost[i]! + stops.outwardCost[h]!;
          else if (mayFollow(this.slate, stops.game[i]!, stops.game[h]!)) way = this.wayCost(i, h);
          else continue;
          least = Math.min(least, way + this.leastWeight(h) + this.toCome[(h - first) * width + games + 1]!);
        }
        this.toCome[(i - first) * width + games] = least;
      }
    }
  }

  /** Tries every stop of a later day than that of `last` (−1 for none) as the first of its day. */
  private startDay(
    last: number,
    games: number,
    soFar: { readonly cost: number; readonly earned: number },
  ): boolean {
    for (let stop = last < 0 ? this.first : last + 1; stop < this.end; stop++) {
      if (last >= 0 && this.sameDay(last, stop)) continue;
      if (!this.restsBefore(stop)) continue;
      const home = last < 0 ? 0 : this.stops.homewardCost[last]!;
      const cost = soFar.cost + home + this.stops.outwardCost[stop]!;
      if (!this.take(stop, games, 1, { cost, earned: soFar.earned })) return false;
    }
    return true;
  }

  private take(
    stop: number,
    gamesBefore: number,
    ofDay: number,
    soFar: { readonly cost: number; readonly earned: number },
  ): boolean {
    const games = gamesBefore + 1;
    const toCome = this.toCome[(stop - this.first) * (this.mostGames + 1) + games]!;
    for (let side = 0; side < 2; side++) {
      const seatCost = this.stops.seatCost[2 * stop + side]!;
      if (seatCost === Infinity) continue;
      const cost = soFar.cost + seatCost;
      const earned = soFar.earned + this.price(stop, side);
      if (cost - earned + toCome > this.limit) continue;
      this.path.push(2 * stop + side);
      const whole = cost + this.stops.homewardCost[stop]! + this.balance(games);
      if (whole - earned <= this.limit && !this.keep(whole, earned)) return false;
      if (games < this.mostGames) {
        if (
          ofDay < this.slate.maxGamesPerDay[this.official]! &&
          !this.goOn(stop, games, ofDay, { cost, earned })
        )
          return false;
        if (!this.startDay(stop, games, { cost, earned })) return false;
      }
      this.path.pop();
    }
    return true;
  }

  private goOn(
    stop: number,
    games: number,
    ofDay: number,
    soFar: { readonly cost: number; readonly earned: number },
  ): boolean {
    for (let next = stop + 1; next < this.end && this.sameDay(stop, next); next++) {
      if (!mayFollow(this.slate, this.stops.game[stop]!, this.stops.game[next]!)) continue;
      if (!this.restsBefore(next)) continue;
      const step = { cost: soFar.cost + this.wayCost(stop, next), earned: soFar.earned };
      if (!this.take(next, games, ofDay + 1, step)) return false;
    }
    return true;
  }

  /** H10 between `stop` and every stop of another day on the path. */
  private restsBefore(stop: number): boolean {
    const restMs = this.slate.minRestMinutes * 60_000;
    const { backMs, leavesMs, game } = this.stops;
    for (const taken of this.path) {
      const other = taken >> 1;
      if (this.sameDay(other, stop)) continue;
      const [earlier, later] =
        this.slate.tipOffMs[game[other]!]! <= this.slate.tipOffMs[game[stop]!]!
          ? [other, stop]
          : [stop, other];
      if (leavesMs[later]! - backMs[earlier]! < restMs) return false;
    }
    return true;
  }

  private keep(cost: number, earned: number): boolean {
    const { out } = this;
    if (out.official.length >= this.most) return false;
    out.official.push(this.official);
    for (const taken of this.path) out.seats.push(2 * this.stops.game[taken >> 1]! + (taken & 1));
    out.seatStart.push(out.seats.length);
    out.cost.push(cost);
    out.reducedCost.push(cost - earned);
    return true;
  }
}
