import { type CompiledSlate } from '../compile';
import { type Stops } from './stops';

/** Reward of a seat for a class of officials: entry (2·game + side) · classCount + class. */
export type SeatPrices = Float64Array;

const NONE = -1;

/**
 * Finds, for one official, the weekend of least reduced cost: travel, balance and the seats' own costs minus
 * the prices of the seats taken. One official's weekend is a path in an acyclic graph (games of a day in
 * order of tip-off, then the next day's), and with a count of games of the day and of the slate as label the
 * shortest path is exact.
 *
 * It looks at a superset of the legal weekends: H3 between neighbours, H4, and H10 between the last game of
 * one day and the first of a later one, which is all of H10 where ways obey the triangle inequality.
 * So the least reduced cost it returns is never above that of a legal weekend, and sums of it are a bound.
 *
 * Stops whose price cannot pay for them are left out beforehand (see `detourSlackMetres`).
 */
export class WeekendPricing {
  /** The weekend found last: seats (2·game + side) by ascending game. */
  readonly seats: Int32Array;
  /** The stop of each of these seats. */
  readonly stopsTaken: Int32Array;
  seatsFound = 0;

  /** Cost of the way between two venues, at from · venueCount + to. */
  private readonly wayCost: Float64Array;
  private readonly balance: Float64Array;
  private readonly balanceStart: Int32Array;
  /** What leaving a stop out could cost each official in longer ways. */
  private readonly slackCost: Float64Array;

  // The stops that may pay, of all days in order; `firstOfDay` cuts them into days.
  private count = 0;
  private readonly stopOf: Int32Array;
  private readonly gameOf: Int32Array;
  private readonly venueOf: Int32Array;
  private readonly sideOf: Uint8Array;
  private readonly weight: Float64Array;
  private readonly firstOfDay: number[] = [];

  // Labels, at (stop · enteringMax + entering) · perDayMax + (games of the day − 1).
  private value: Float64Array = new Float64Array(0);
  private neighbour: Int32Array = new Int32Array(0);
  // At stop · totalMax + total: best weekend that ends at the stop, home again.
  private readonly endValue: Float64Array;
  private readonly endLabel: Int32Array;
  // At stop · totalMax + entering: best weekend before the day of the stop, given that the day starts there.
  private readonly entry: Float64Array;
  private readonly entryStop: Int32Array;
  private readonly totalMax: number;
  private readonly perDayMax: number;

  // The official at hand, and the best weekend so far: it ends at `bestEnd`, or its last day starts at `bestStart`.
  private balanceAt = 0;
  private mostGames = 0;
  private mostOfDay = 0;
  private best = 0;
  private bestTotal = 0;
  private bestEnd = NONE;
  private bestStart = NONE;
  private bestOfLastDay = 0;

  constructor(
    private readonly slate: CompiledSlate,
    private readonly stops: Stops,
    slackMetres: Float64Array,
  ) {
    let stopsMax = 0;
    for (let o = 0; o < slate.officialCount; o++)
      stopsMax = Math.max(stopsMax, stops.start[o + 1]! - stops.start[o]!);
    const limit = (values: Int32Array): number => values.reduce((most, value) => Math.max(most, value), 0);
    // Nobody can work more games than they have stops, whatever the limits say.
    this.totalMax = Math.min(limit(slate.maxGames), stopsMax) + 1;
    this.perDayMax = Math.max(1, Math.min(limit(slate.maxGamesPerDay), stopsMax));
    this.wayCost = Float64Array.from(
      slate.betweenVenues.metres,
      (metres) => (slate.weights.travelPerKm * metres) / 1000,
    );
    this.slackCost = slackMetres.map((metres) => (slate.weights.travelPerKm * metres) / 1000);
    this.stopOf = new Int32Array(stopsMax);
    this.gameOf = new Int32Array(stopsMax);
    this.venueOf = new Int32Array(stopsMax);
    this.sideOf = new Uint8Array(stopsMax);
    this.weight = new Float64Array(stopsMax);
    this.endValue = new Float64Array(stopsMax * this.totalMax);
    this.endLabel = new Int32Array(stopsMax * this.totalMax);
    this.entry = new Float64Array(stopsMax * this.totalMax);
    this.entryStop = new Int32Array(stopsMax * this.totalMax);
    this.seats = new Int32Array(stopsMax);
    this.stopsTaken = new Int32Array(stopsMax);
    ({ balance: this.balance, balanceStart: this.balanceStart } = balanceByCount(slate, stops));
  }

  /**
   * Least reduced cost of a weekend of `official` at these prices of seats and fines on stops (by stop, for
   * either seat); the weekend itself is left in `seats`.
   */
  price(official: number, prices: SeatPrices, fines: Float64Array): number {
    this.gather(official, prices, fines);
    this.balanceAt = this.balanceStart[official]!;
    this.mostGames = this.balanceStart[official + 1]! - this.balanceAt - 1;
    this.mostOfDay = Math.min(this.slate.maxGamesPerDay[official]!, this.mostGames);
    this.best = this.balance[this.balanceAt]!;
    this.bestEnd = NONE;
    this.bestTotal = 0;
    this.bestStart = NONE;
    const dayCount = this.firstOfDay.length - 1;
    if (this.mostOfDay > 0) {
      for (let day = 0; day < dayCount; day++) {
        this.enterDay(day);
        if (day === dayCount - 1) this.walkLastDay(day);
        else this.walkDay(day);
      }
    }
    this.trace();
    return this.best;
  }

  /** Keeps the stops that might pay: one whose seat costs more than another game could ever be worth cannot. */
  private gather(official: number, prices: SeatPrices, fines: Float64Array): void {
    const { stops, slate } = this;
    const balanceAt = this.balanceStart[official]!;
    const mostGames = this.balanceStart[official + 1]! - balanceAt - 1;
    const anotherGame =
      mostGames === 0 ? 0 : Math.max(0, this.balance[balanceAt]! - this.balance[balanceAt + 1]!);
    const mostWorth = anotherGame + this.slackCost[official]!;
    const officialClass = slate.officialClass[official]!;
    const classCount = slate.classCount;
    this.count = 0;
    this.firstOfDay.length = 0;
    let day = NONE;
    for (let stop = stops.start[official]!; stop < stops.start[official + 1]!; stop++) {
      const game = stops.game[stop]!;
      const priceAt = 2 * game * classCount + officialClass;
      const asChief = stops.seatCost[2 * stop]! - prices[priceAt]!;
      const asUmpire = stops.seatCost[2 * stop + 1]! - prices[priceAt + classCount]!;
      const weight = Math.min(asChief, asUmpire) + fines[stop]!;
      if (weight >= mostWorth) continue;
      if (slate.gameDay[game]! !== day) {
        day = slate.gameDay[game]!;
        this.firstOfDay.push(this.count);
      }
      this.stopOf[this.count] = stop;
      this.gameOf[this.count] = game;
      this.venueOf[this.count] = slate.gameVenue[game]!;
      this.sideOf[this.count] = asChief <= asUmpire ? 0 : 1;
      this.weight[this.count] = weight;
      this.count++;
    }
    this.firstOfDay.push(this.count);
    const labels = this.count * this.totalMax * this.perDayMax;
    if (this.value.length < labels) {
      this.value = new Float64Array(2 * labels);
      this.neighbour = new Int32Array(2 * labels);
    }
  }

  /** The best way to come to each game of the day as its first, by games worked on earlier days. */
  private enterDay(day: number): void {
    const { slate, stops, totalMax, entry, entryStop } = this;
    const first = this.firstOfDay[day]!;
    const restMs = slate.minRestMinutes * 60_000;
    // Nearly every game leaves rest enough after any earlier day: the best of all serves them together.
    let lastBackMs = -Infinity;
    for (let h = 0; h < first; h++) lastBackMs = Math.max(lastBackMs, stops.backMs[this.stopOf[h]!]!);
    let shared = NONE;
    for (let i = first; i < this.firstOfDay[day + 1]!; i++) {
      const at = i * totalMax;
      // With clocks set back over midnight "earlier day" says nothing about time; then rest is not asked for.
      const latestBackMs = slate.daysInterleave ? Infinity : stops.leavesMs[this.stopOf[i]!]! - restMs;
      const restsAfterAll = latestBackMs >= lastBackMs;
      if (restsAfterAll && shared !== NONE) {
        entry.copyWithin(at, shared, shared + totalMax);
        entryStop.copyWithin(at, shared, shared + totalMax);
        continue;
      }
      if (restsAfterAll) shared = at;
      entry.fill(Infinity, at, at + totalMax);
      entry[at] = 0;
      entryStop[at] = NONE;
      for (let h = 0; h < first; h++) {
        if (stops.backMs[this.stopOf[h]!]! > latestBackMs) continue;
        for (let total = 1; total < this.mostGames; total++) {
          const value = this.endValue[h * totalMax + total]!;
          if (value < entry[at + total]!) {
            entry[at + total] = value;
            entryStop[at + total] = h;
          }
        }
      }
    }
  }

  /** Shortest paths through a day that is not the last, by games of earlier days and of the day so far. */
  private walkDay(day: number): void {
    const { slate, stops, totalMax, perDayMax, value, neighbour, mostOfDay, mostGames } = this;
    const { gameOf, venueOf, wayCost } = this;
    const first = this.firstOfDay[day]!;
    const end = this.firstOfDay[day + 1]!;
    // On the first day that has stops nobody comes from an earlier one.
    const enteringMax = day === 0 ? 0 : mostGames - 1;
    for (let i = first; i < end; i++) {
      const outward = stops.outwardCost[this.stopOf[i]!]! + this.weight[i]!;
      for (let entering = 0; entering <= enteringMax; entering++) {
        const at = (i * totalMax + entering) * perDayMax;
        value.fill(Infinity, at, at + perDayMax);
        value[at] = this.entry[i * totalMax + entering]! + outward;
        neighbour[at] = NONE;
      }
    }
    for (let i = first; i < end; i++) {
      this.endDay(i, enteringMax);
      const game = gameOf[i]!;
      const dayStart = slate.dayStart[slate.gameDay[game]!]!;
      const row = followRow(slate, game);
      const ways = venueOf[i]! * slate.venueCount;
      for (let h = i + 1; mostOfDay > 1 && h < end; h++) {
        const column = gameOf[h]! - dayStart;
        if (((slate.follow[row + (column >> 5)]! >>> (column & 31)) & 1) === 0) continue;
        const way = wayCost[ways + venueOf[h]!]! + this.weight[h]!;
        for (let entering = 0; entering <= enteringMax; entering++) {
          const from = (i * totalMax + entering) * perDayMax;
          const to = (h * totalMax + entering) * perDayMax;
          const most = Math.min(mostOfDay, mostGames - entering);
          for (let games = 1; games < most; games++) {
            const cost = value[from + games - 1]! + way;
            if (cost < value[to + games]!) {
              value[to + games] = cost;
              neighbour[to + games] = i;
            }
          }
        }
      }
    }
  }

  /** The best weekend that ends its day at stop i, by games worked so far; perhaps the best of all. */
  private endDay(i: number, enteringMax: number): void {
    const { totalMax, perDayMax } = this;
    const homeward = this.stops.homewardCost[this.stopOf[i]!]!;
    this.endValue.fill(Infinity, i * totalMax, (i + 1) * totalMax);
    for (let entering = 0; entering <= enteringMax; entering++) {
      const at = (i * totalMax + entering) * perDayMax;
      const most = Math.min(this.mostOfDay, this.mostGames - entering);
      for (let games = 1; games <= most; games++) {
        const cost = this.value[at + games - 1]! + homeward;
        const end = i * totalMax + entering + games;
        if (cost >= this.endValue[end]!) continue;
        this.endValue[end] = cost;
        this.endLabel[end] = at + games - 1;
        const whole = cost + this.balance[this.balanceAt + entering + games]!;
        if (whole < this.best) {
          this.best = whole;
          this.bestEnd = i;
          this.bestTotal = entering + games;
        }
      }
    }
  }

  /**
   * The last day is walked backwards, from coming home to each first game, so that its paths need not be
   * told apart by what went before; then both halves are joined at the first game of the day.
   */
  private walkLastDay(day: number): void {
    const { slate, stops, totalMax, perDayMax, value, neighbour, mostOfDay, mostGames } = this;
    const { gameOf, venueOf, wayCost } = this;
    const end = this.firstOfDay[day + 1]!;
    const enteringMax = day === 0 ? 0 : mostGames - 1;
    const stride = totalMax * perDayMax;
    for (let i = end - 1; i >= this.firstOfDay[day]!; i--) {
      const stop = this.stopOf[i]!;
      const game = gameOf[i]!;
      const weight = this.weight[i]!;
      const at = i * stride;
      value.fill(Infinity, at, at + perDayMax);
      value[at] = weight + stops.homewardCost[stop]!;
      neighbour[at] = NONE;
      const dayStart = slate.dayStart[slate.gameDay[game]!]!;
      const row = followRow(slate, game);
      const ways = venueOf[i]! * slate.venueCount;
      for (let h = i + 1; mostOfDay > 1 && h < end; h++) {
        const column = gameOf[h]! - dayStart;
        if (((slate.follow[row + (column >> 5)]! >>> (column & 31)) & 1) === 0) continue;
        const way = wayCost[ways + venueOf[h]!]! + weight;
        const from = h * stride;
        for (let games = 1; games < mostOfDay; games++) {
          const cost = value[from + games - 1]! + way;
          if (cost < value[at + games]!) {
            value[at + games] = cost;
            neighbour[at + games] = h;
          }
        }
      }
      const outward = stops.outwardCost[stop]!;
      for (let entering = 0; entering <= enteringMax; entering++) {
        const before = this.entry[i * totalMax + entering]! + outward;
        const most = Math.min(mostOfDay, mostGames - entering);
        for (let games = 1; games <= most; games++) {
          const whole = before + value[at + games - 1]! + this.balance[this.balanceAt + entering + games]!;
          if (whole < this.best) {
            this.best = whole;
            this.bestStart = i;
            this.bestTotal = entering + games;
            this.bestOfLastDay = games;
          }
        }
      }
    }
  }

  /** Walks along the best path and leaves its seats in `seats`, ascending. */
  private trace(): void {
    const { totalMax, perDayMax } = this;
    this.seatsFound = this.bestTotal;
    let end = this.bestEnd;
    let left = this.bestTotal;
    if (this.bestStart !== NONE) {
      left -= this.bestOfLastDay;
      let at = left;
      let i = this.bestStart;
      for (let games = this.bestOfLastDay; games > 0; games--) {
        this.note(at++, i);
        i = this.neighbour[i * totalMax * perDayMax + games - 1]!;
      }
      end = this.entryStop[this.bestStart * totalMax + left]!;
    }
    while (end !== NONE) {
      let label = this.endLabel[end * totalMax + left]!;
      const entering = Math.floor(label / perDayMax) % totalMax;
      let first = end;
      for (let i = end; i !== NONE;) {
        this.note(--left, i);
        first = i;
        i = this.neighbour[label]!;
        label = (i * totalMax + entering) * perDayMax + (label % perDayMax) - 1;
      }
      end = this.entryStop[first * totalMax + entering]!;
    }
  }

  private note(at: number, i: number): void {
    this.seats[at] = 2 * this.gameOf[i]! + this.sideOf[i]!;
    this.stopsTaken[at] = this.stopOf[i]!;
  }
}

/** Where the row of `game` begins in the follow matrix of its day. */
function followRow(slate: CompiledSlate, game: number): number {
  const day = slate.gameDay[game]!;
  return slate.followStart[day]! + (game - slate.dayStart[day]!) * slate.followWords[day]!;
}

/** Balance cost by number of games: entries balanceStart[o] … balanceStart[o + 1] − 1 for 0, 1, … games. */
function balanceByCount(
  slate: CompiledSlate,
  stops: Stops,
): { readonly balance: Float64Array; readonly balanceStart: Int32Array } {
  const balanceStart = new Int32Array(slate.officialCount + 1);
  const balance: number[] = [];
  for (let official = 0; official < slate.officialCount; official++) {
    const most = Math.min(slate.maxGames[official]!, stops.start[official + 1]! - stops.start[official]!);
    for (let games = 0; games <= most; games++) {
      const distance = slate.priorGames[official]! + games - slate.targetGames[official]!;
      balance.push(slate.weights.balance * distance * distance);
    }
    balanceStart[official + 1] = balance.length;
  }
  return { balance: Float64Array.from(balance), balanceStart };
}
