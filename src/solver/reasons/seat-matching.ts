/** A set of seats and the officials who compete for them. */
export interface SeatMarket {
  readonly seats: readonly number[];
  /** By seat: who may take it. */
  readonly takersOf: ReadonlyMap<number, readonly number[]>;
  /** By official: how many of the seats they can hold at most. */
  readonly roomOf: ReadonlyMap<number, number>;
}

/** Seats that cannot all be filled, and everybody who may take one of them. */
export interface Shortage {
  readonly seats: readonly number[];
  readonly officials: readonly number[];
}

/**
 * Seats matched with officials who have room for several, filled one seat at a time along alternating paths.
 * When no path is left, the seats and officials reached are a set that Hall's condition fails for (P. Hall, On
 * representatives of subsets, 1935): all the officials reached are full, with seats of the set alone. No seat can be
 * left out of it: the path to that seat would then end at somebody with room.
 */
export class SeatMatching {
  private readonly officialOfSeat = new Map<number, number>();
  private readonly seatsOf = new Map<number, Set<number>>();

  constructor(private readonly market: SeatMarket) {}

  /** Takes a known filling over as far as there is room. */
  seed(seat: number, official: number): void {
    const takers = this.market.takersOf.get(seat);
    if (takers?.includes(official) === true && this.hasRoom(official)) this.put(seat, official);
  }

  isFilled(seat: number): boolean {
    return this.officialOfSeat.has(seat);
  }

  /** Finds somebody for an empty seat, moving others around; the shortage when nobody can be found. */
  fill(root: number): Shortage | null {
    const cameFrom = new Map<number, number>();
    const queue = [root];
    for (let at = 0; at < queue.length; at++) {
      const seat = queue[at]!;
      for (const official of this.market.takersOf.get(seat) ?? []) {
        if (cameFrom.has(official)) continue;
        cameFrom.set(official, seat);
        if (this.hasRoom(official)) {
          this.moveAlong(official, cameFrom);
          return null;
        }
        for (const held of this.seatsOf.get(official) ?? []) if (!queue.includes(held)) queue.push(held);
      }
    }
    return { seats: queue, officials: [...cameFrom.keys()] };
  }

  private moveAlong(last: number, cameFrom: ReadonlyMap<number, number>): void {
    let official: number | undefined = last;
    while (official !== undefined) {
      const seat = cameFrom.get(official)!;
      const former = this.officialOfSeat.get(seat);
      if (former !== undefined) this.seatsOf.get(former)!.delete(seat);
      this.put(seat, official);
      official = former;
    }
  }

  private put(seat: number, official: number): void {
    this.officialOfSeat.set(seat, official);
    const seats = this.seatsOf.get(official);
    if (seats === undefined) this.seatsOf.set(official, new Set([seat]));
    else seats.add(seat);
  }

  private hasRoom(official: number): boolean {
    return (this.seatsOf.get(official)?.size ?? 0) < (this.market.roomOf.get(official) ?? 0);
  }
}

/** Whether all seats of the market can be filled at once, as far as room goes. */
export function canFillAll(market: SeatMarket): boolean {
  const matching = new SeatMatching(market);
  return market.seats.every((seat) => matching.fill(seat) === null);
}
