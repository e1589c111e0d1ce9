import { type CompiledSlate } from '../compile';
import { FIT_CHIEF, FIT_UMPIRE } from '../compile/fit-bits';
import { MINUTE_MS, NOBODY, SEAT_FREE, SEAT_KEPT_OPEN } from '../compile/facts';
import { type Holders } from '../tours';
import { DayOrder } from './day-order';
import { quickXplain } from './quick-xplain';
import { canFillAll, SeatMatching, type SeatMarket } from './seat-matching';

/** Seats that everybody who may take them has too little room for. */
export interface HallSet {
  /** Ascending; more than `room`. Of up to 80 seats none can be left out without the shortage vanishing. */
  readonly seats: readonly number[];
  /** Everybody who may take at least one of them, with how many of them they can work at most. */
  readonly officials: readonly { readonly official: number; readonly roomFor: number }[];
  /** The sum over the officials. */
  readonly room: number;
}

/** Whether the official may hold the seat as far as the seat alone goes (H1, H2, H5, H6, H7). */
export function mayHold(slate: CompiledSlate, official: number, seat: number): boolean {
  const lock = slate.seatLock[seat]!;
  if (lock !== SEAT_FREE && lock !== official) return false;
  const bit = (seat & 1) === 0 ? FIT_CHIEF : FIT_UMPIRE;
  return (slate.fit[official * slate.gameCount + (seat >> 1)]! & bit) !== 0;
}

/**
 * Looks for a set of seats around an open one that cannot all be filled: among games that nobody can work two
 * of, then in ever longer parts of the day, then the day, then the whole slate. Null when there is none; the
 * seat is then open for a reason that counting does not show.
 */
export function findHallSet(slate: CompiledSlate, holders: Holders, seat: number): HallSet | null {
  const orders = new Map<number, DayOrder>();
  const orderOf = (day: number) => {
    const order = orders.get(day) ?? new DayOrder(slate, day);
    orders.set(day, order);
    return order;
  };
  let smallest: HallSet | null = null;
  for (const games of cliquesAround(slate, seat >> 1, orderOf(slate.gameDay[seat >> 1]!))) {
    const found = shortageAmong(slate, holders, seat, games, orderOf);
    if (found !== null && (smallest === null || found.seats.length < smallest.seats.length)) smallest = found;
  }
  if (smallest !== null) return smallest;
  for (const games of spansAround(slate, seat >> 1)) {
    const found = shortageAmong(slate, holders, seat, games, orderOf);
    if (found !== null) return found;
  }
  return null;
}

/** Everybody's room for the set, counted anew: null unless the seats outnumber it. */
export function countHallSet(slate: CompiledSlate, seats: readonly number[]): HallSet | null {
  const orders = new Map<number, DayOrder>();
  const market = marketOf(slate, seats, (day) => {
    const order = orders.get(day) ?? new DayOrder(slate, day);
    orders.set(day, order);
    return order;
  });
  return hallSetOf(market);
}

function hallSetOf({ seats, roomOf }: SeatMarket): HallSet | null {
  const officials = [...roomOf].map(([official, roomFor]) => ({ official, roomFor }));
  officials.sort((a, b) => a.official - b.official);
  const room = officials.reduce((sum, { roomFor }) => sum + roomFor, 0);
  return seats.length > room ? { seats: [...seats].sort((a, b) => a - b), officials, room } : null;
}

type OrderOf = (day: number) => DayOrder;

function shortageAmong(
  slate: CompiledSlate,
  holders: Holders,
  seat: number,
  games: readonly number[],
  orderOf: OrderOf,
): HallSet | null {
  let seats: readonly number[] = games
    .flatMap((game) => [2 * game, 2 * game + 1])
    .filter((own) => slate.seatLock[own] !== SEAT_KEPT_OPEN);
  let least: HallSet | null = null;
  for (;;) {
    const market = marketOf(slate, seats, orderOf);
    const matching = new SeatMatching(market);
    for (const own of seats) if (holders[own] !== NOBODY) matching.seed(own, holders[own]!);
    // The seat comes last: a shortage that another open seat shows first may still take this one away.
    for (const own of seats) if (own !== seat && !matching.isFilled(own)) matching.fill(own);
    const shortage = matching.fill(seat);
    if (shortage === null) return least === null ? null : fewestSeats(slate, least, seat, orderOf);
    least = hallSetOf(marketOf(slate, shortage.seats, orderOf)) ?? least;
    // In fewer games people may have less room, so that still fewer seats show the shortage.
    if (shortage.seats.length === seats.length)
      return least === null ? null : fewestSeats(slate, least, seat, orderOf);
    seats = shortage.seats;
  }
}

/** Larger sets are left as they are: the search for fewer seats counts the whole set over and over. */
const SEATS_TO_REDUCE_MAX = 80;

function fewestSeats(slate: CompiledSlate, found: HallSet, seat: number, orderOf: OrderOf): HallSet {
  if (found.seats.length > SEATS_TO_REDUCE_MAX) return found;
  const others = found.seats.filter((own) => own !== seat);
  const fails = (part: readonly number[]) => !canFillAll(marketOf(slate, [seat, ...part], orderOf));
  const fewest = quickXplain(others, fails);
  return (fewest === null ? null : hallSetOf(marketOf(slate, [seat, ...fewest], orderOf))) ?? found;
}

function marketOf(slate: CompiledSlate, seats: readonly number[], orderOf: OrderOf): SeatMarket {
  const takersOf = new Map<number, number[]>();
  const gamesOf = new Map<number, Set<number>>();
  const { start, values } = slate.officialsOfGame;
  for (const seat of seats) {
    const game = seat >> 1;
    const takers: number[] = [];
    for (let i = start[game]!; i < start[game + 1]!; i++) {
      const official = values[i]!;
      if (!mayHold(slate, official, seat)) continue;
      takers.push(official);
      const games = gamesOf.get(official);
      if (games === undefined) gamesOf.set(official, new Set([game]));
      else games.add(game);
    }
    takersOf.set(seat, takers);
  }
  const roomOf = new Map<number, number>();
  for (const [official, games] of gamesOf)
    roomOf.set(official, roomFor(slate, official, [...games], orderOf));
  return { seats, takersOf, roomOf };
}

/** The most of the games that the official can work: their limits, and the longest tour of each day. */
function roomFor(slate: CompiledSlate, official: number, games: number[], orderOf: OrderOf): number {
  const byDay = new Map<number, number[]>();
  for (const game of games.sort((a, b) => a - b)) {
    const day = slate.gameDay[game]!;
    byDay.set(day, [...(byDay.get(day) ?? []), game]);
  }
  let room = 0;
  for (const [day, own] of byDay)
    room += Math.min(slate.maxGamesPerDay[official]!, orderOf(day).longestTour(own));
  return Math.min(slate.maxGames[official]!, room);
}

/** Maximal sets of games around one game of which nobody can work two. */
function cliquesAround(slate: CompiledSlate, game: number, order: DayOrder): readonly (readonly number[])[] {
  const rivals = dayGames(slate, game).filter((other) => other !== game && !order.canWorkBoth(game, other));
  const seen = new Set<string>();
  const cliques: number[][] = [];
  for (const first of rivals.length === 0 ? [game] : rivals) {
    const clique = first === game ? [game] : [game, first];
    const nearest = [...rivals].sort((a, b) => apart(slate, a, first) - apart(slate, b, first) || a - b);
    for (const other of nearest)
      if (!clique.includes(other) && clique.every((own) => !order.canWorkBoth(own, other)))
        clique.push(other);
    clique.sort((a, b) => a - b);
    const key = clique.join();
    if (!seen.has(key)) cliques.push(clique);
    seen.add(key);
  }
  return cliques;
}

/** Hours of the day around one game, the day, the slate; each once. */
function* spansAround(slate: CompiledSlate, game: number): Generator<readonly number[]> {
  const day = dayGames(slate, game);
  let before = 0;
  for (const minutes of [90, 180, 300, Infinity]) {
    const games = day.filter((other) => apart(slate, game, other) <= minutes * MINUTE_MS);
    if (games.length > before) yield games;
    before = games.length;
  }
  if (slate.dayCount > 1) yield Array.from({ length: slate.gameCount }, (_, index) => index);
}

function dayGames(slate: CompiledSlate, game: number): readonly number[] {
  const day = slate.gameDay[game]!;
  const first = slate.dayStart[day]!;
  return Array.from({ length: slate.dayStart[day + 1]! - first }, (_, index) => first + index);
}

function apart(slate: CompiledSlate, one: number, other: number): number {
  return Math.abs(slate.tipOffMs[one]! - slate.tipOffMs[other]!);
}
