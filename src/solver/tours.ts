import { NOBODY, type SlateFacts } from './compile/facts';

/**
 * A slate as the solver holds it: the official in each seat (chief of game g at 2·g, umpire at 2·g + 1),
 * `NOBODY` for an open seat.
 */
export type Holders = Int32Array;

/** The games of each official, ascending: those of official o are games[start[o]] … games[start[o + 1] − 1]. */
export interface GamesByOfficial {
  readonly start: Int32Array;
  readonly games: Int32Array;
}

/** A game whose two seats are held by one official is listed twice. */
export function gamesByOfficial(facts: SlateFacts, holders: Holders): GamesByOfficial {
  const start = new Int32Array(facts.officialCount + 1);
  for (const holder of holders) if (holder !== NOBODY) start[holder + 1]!++;
  for (let official = 0; official < facts.officialCount; official++) start[official + 1]! += start[official]!;
  const games = new Int32Array(start[facts.officialCount]!);
  const next = start.slice();
  holders.forEach((holder, seat) => {
    if (holder !== NOBODY) games[next[holder]!++] = seat >> 1;
  });
  return { start, games };
}

/** Cuts one official's ascending games into tours, one a day. */
export function toursOf(facts: SlateFacts, games: Int32Array): readonly Int32Array[] {
  const tours: Int32Array[] = [];
  let first = 0;
  for (let i = 1; i <= games.length; i++) {
    if (i < games.length && facts.gameDay[games[i]!] === facts.gameDay[games[first]!]) continue;
    tours.push(games.subarray(first, i));
    first = i;
  }
  return tours;
}
