import { mayFollow } from '../compile/compile-follow';
import { type CompiledSlate } from '../compile/compiled-slate';
import { MINUTE_MS, NOBODY } from '../compile/facts';
import { backHomeMs, leavesHomeMs } from '../rules/h10-rest';
import { isLegalCrew } from '../search/crew';
import { isPossible } from './fit';
import { VACANT, type WorkingSlate } from './working-slate';

/** A broken rule: at least one of these seats has to change hands, or one of the remedies has to be taken. */
export interface Clash {
  readonly seats: readonly number[];
  /** For two games of a tour that may not follow each other; a third one between them may help. */
  readonly gap: TourGap | null;
}

export interface TourGap {
  readonly official: number;
  readonly earlier: number;
  readonly later: number;
}

/** The crew of the game breaks a rule (H1, H5, H8, H9). A seat that still waits for somebody is not held against it. */
export function clashOfCrew(working: WorkingSlate, game: number): Clash | null {
  const { status, holders, slate } = working;
  const chiefSeat = 2 * game;
  const umpireSeat = chiefSeat + 1;
  if (status[chiefSeat] === VACANT || status[umpireSeat] === VACANT) return null;
  if (isLegalCrew(slate, holders[chiefSeat]!, holders[umpireSeat]!)) return null;
  return { seats: [chiefSeat, umpireSeat], gap: null };
}

/** The official's games break a rule among themselves (H3, H4, H10). */
export function clashOfOfficial(working: WorkingSlate, official: number): Clash | null {
  const { slate } = working;
  const seats = working.seatsOf[official]!;
  if (seats.length > slate.maxGames[official]!) return { seats: seats.slice(), gap: null };
  let dayFirst = 0;
  for (let i = 1; i <= seats.length; i++) {
    const day = slate.gameDay[seats[dayFirst]! >> 1];
    if (i < seats.length && slate.gameDay[seats[i]! >> 1] === day) {
      const clash = clashInTour(working, official, seats[i - 1]!, seats[i]!);
      if (clash !== null) return clash;
      continue;
    }
    if (i - dayFirst > slate.maxGamesPerDay[official]!) return { seats: seats.slice(dayFirst, i), gap: null };
    dayFirst = i;
  }
  return slate.dayCount === 1 ? null : clashOfRest(working, official);
}

/** H3 between two seats that follow each other in a tour. */
function clashInTour(
  working: WorkingSlate,
  official: number,
  earlierSeat: number,
  laterSeat: number,
): Clash | null {
  const earlier = earlierSeat >> 1;
  const later = laterSeat >> 1;
  // One game twice is both seats of a crew, which the crew's own check finds.
  if (earlier === later || mayFollow(working.slate, earlier, later)) return null;
  return { seats: [earlierSeat, laterSeat], gap: { official, earlier, later } };
}

/**
 * With measured legs that break the triangle inequality, two games of a tour may be too far apart by
 * themselves and fine with others between them: the seats that the official could take first to that end.
 */
export function seatsBetween(slate: CompiledSlate, { official, earlier, later }: TourGap): readonly number[] {
  return stepsBetween(slate, earlier, later)
    .flatMap((game) => [2 * game, 2 * game + 1])
    .filter((seat) => isPossible(slate, official, seat));
}

/** Games that may follow the earlier one and from which, straight or by others, the later one can be reached. */
function stepsBetween(slate: CompiledSlate, earlier: number, later: number): readonly number[] {
  const reaches = new Uint8Array(later - earlier);
  const steps: number[] = [];
  for (let game = later - 1; game > earlier; game--) {
    let isReached = mayFollow(slate, game, later);
    for (let next = game + 1; next < later && !isReached; next++)
      isReached = reaches[next - earlier] === 1 && mayFollow(slate, game, next);
    if (!isReached) continue;
    reaches[game - earlier] = 1;
    if (mayFollow(slate, earlier, game)) steps.push(game);
  }
  return steps;
}

/** H10 between any two games of different days. */
function clashOfRest(working: WorkingSlate, official: number): Clash | null {
  const { slate } = working;
  const seats = working.seatsOf[official]!;
  for (let i = 1; i < seats.length; i++) {
    const game = seats[i]! >> 1;
    for (let j = 0; j < i; j++) {
      const other = seats[j]! >> 1;
      if (slate.gameDay[other] === slate.gameDay[game]) continue;
      const inOrder = slate.tipOffMs[other]! <= slate.tipOffMs[game]!;
      const earlier = inOrder ? other : game;
      const later = inOrder ? game : other;
      const restMs = leavesHomeMs(slate, official, later) - backHomeMs(slate, official, earlier);
      if (restMs < slate.minRestMinutes * MINUTE_MS) return { seats: [seats[j]!, seats[i]!], gap: null };
    }
  }
  return null;
}

/** The first clash of the given games' crews and officials, in that order; null when there is none. */
export function firstClash(
  working: WorkingSlate,
  games: readonly number[],
  officials: readonly number[],
): Clash | null {
  for (const game of games) {
    const clash = clashOfCrew(working, game);
    if (clash !== null) return clash;
  }
  for (const official of officials) {
    const clash = official === NOBODY ? null : clashOfOfficial(working, official);
    if (clash !== null) return clash;
  }
  return null;
}
