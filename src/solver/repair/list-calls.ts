import { NOBODY } from '../compile/facts';
import { type Holders } from '../tours';

/** A call in indexes; −1 stands for no seat. */
export interface SeatCall {
  readonly official: number;
  readonly leaves: number;
  readonly takes: number;
}

/**
 * The calls that lead from one slate to another, along the chains: whoever takes a broken seat, then whoever
 * takes the seat that they leave, and so on; those who only lose a seat come last. `excused` are losses
 * that need no call.
 */
export function listCalls(
  before: Holders,
  after: Holders,
  isBroken: (seat: number) => boolean,
  isExcused: (seat: number) => boolean,
): readonly SeatCall[] {
  const changed = [...before.keys()].filter((seat) => before[seat] !== after[seat]);
  const lostBy = new Map<number, number[]>();
  for (const seat of changed) {
    const holder = before[seat]!;
    if (holder !== NOBODY && !isExcused(seat)) lostBy.set(holder, [...(lostBy.get(holder) ?? []), seat]);
  }
  const calls: SeatCall[] = [];
  const isDone = new Set<number>();
  const follow = (first: number) => {
    for (let seat = first; seat >= 0 && !isDone.has(seat);) {
      isDone.add(seat);
      const official = after[seat]!;
      if (official === NOBODY) return;
      const lost = lostBy.get(official) ?? [];
      const leaves = lost.includes(seat ^ 1) ? seat ^ 1 : (lost[0] ?? -1);
      lostBy.set(
        official,
        lost.filter((other) => other !== leaves),
      );
      calls.push({ official, leaves, takes: seat });
      seat = leaves;
    }
  };
  for (const seat of changed.filter(isBroken)) follow(seat);
  for (const seat of changed) follow(seat);
  const losses = [...lostBy].flatMap(([official, seats]) =>
    seats.map((leaves) => ({ official, leaves, takes: -1 })),
  );
  return [...calls, ...losses];
}
