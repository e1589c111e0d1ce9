import { type Assignment, type CostBreakdown } from '../answer';
import { type Official, type SlateProblem, type TimeWindow } from '../problem';
import { withGame, withLock, withOfficial } from './changed-problem';
import { type SeatMove } from './reoptimise-seat';
import { type SeatPlace } from './present-slate';

/** A change to what people said or the calendar holds, small enough to ask for. Never a conflict, a lock or rest. */
export type RemedyChange =
  /** Nothing has to change: the slate as it is can be searched further. */
  | { readonly kind: 'search' }
  /** The official is available longer, to cover this game's duty. */
  | {
      readonly kind: 'availability';
      readonly official: string;
      readonly window: TimeWindow;
      readonly moreMinutes: number;
    }
  /** The official works more games than their limits say. */
  | {
      readonly kind: 'load';
      readonly official: string;
      readonly maxGamesPerDay: number;
      readonly maxGames: number;
    }
  /** The official accepts a longer way from home. */
  | {
      readonly kind: 'reach';
      readonly official: string;
      readonly maxHomeMinutes: number;
      readonly moreMinutes: number;
    }
  /** The game tips off earlier (negative) or later. */
  | { readonly kind: 'tip-off'; readonly game: string; readonly tipOff: string; readonly byMinutes: number }
  /** The official's wish to keep this time free is set aside. */
  | { readonly kind: 'wish'; readonly official: string; readonly game: string }
  /** The official takes this seat although its division asks for a higher level. */
  | {
      readonly kind: 'level';
      readonly official: string;
      readonly place: SeatPlace;
      readonly level: number;
      readonly minLevel: number;
    };

/** A change that fills the seat: a real problem with it was solved again and the checker found the slate sound. */
export interface Remedy {
  readonly change: RemedyChange;
  /** Whoever is responsible for the rule has to agree: true for level exceptions. */
  readonly needsApproval: boolean;
  /** Who would hold the seat. */
  readonly filledBy: string;
  /** In the whole slate, after the remedy. */
  readonly openSeats: number;
  /** Against the present slate, by term. */
  readonly costChange: CostBreakdown;
  /** Every seat that changes hands, the one asked about first. */
  readonly moves: readonly SeatMove[];
  readonly assignments: readonly Assignment[];
}

/** The problem with the change made. */
export function applyRemedy(problem: SlateProblem, change: RemedyChange): SlateProblem {
  switch (change.kind) {
    case 'search':
      return problem;
    case 'availability':
      return withOfficial(problem, change.official, (official) => ({
        ...official,
        available: [...official.available, change.window],
      }));
    case 'load': {
      const { maxGamesPerDay, maxGames } = change;
      return withOfficial(problem, change.official, (official) => ({
        ...official,
        maxGamesPerDay,
        maxGames,
      }));
    }
    case 'reach':
      return withOfficial(problem, change.official, (official) => ({
        ...official,
        maxHomeMinutes: change.maxHomeMinutes,
      }));
    case 'tip-off':
      return withGame(problem, change.game, (game) => ({ ...game, tipOff: change.tipOff }));
    case 'wish':
      return withoutWish(problem, change.official, change.game);
    case 'level':
      return withLevelException(problem, change);
  }
}

function withoutWish(problem: SlateProblem, id: string, gameId: string): SlateProblem {
  const game = problem.games.find((own) => own.id === gameId)!;
  const { arrivalLeadMinutes, wrapUpMinutes } = problem.policy;
  const tipOffMs = Date.parse(game.tipOff);
  const fromMs = tipOffMs - arrivalLeadMinutes * 60_000;
  const toMs = tipOffMs + (game.durationMinutes + wrapUpMinutes) * 60_000;
  return withOfficial(problem, id, (official) => {
    const reluctant = (official.reluctant ?? []).filter(
      ({ from, to }) => Date.parse(to) <= fromMs || Date.parse(from) >= toMs,
    );
    return { ...official, reluctant };
  });
}

/** A division of its own for this game, and the official locked in, so that nobody else gains by the exception. */
function withLevelException(
  problem: SlateProblem,
  { official, place, level }: Extract<RemedyChange, { readonly kind: 'level' }>,
): SlateProblem {
  const game = problem.games.find(({ id }) => id === place.game)!;
  const division = problem.divisions.find(({ id }) => id === game.division)!;
  const taken = new Set(problem.divisions.map(({ id }) => id));
  let id = `${division.id} (exception)`;
  while (taken.has(id)) id += ')';
  const lowered = place.seat === 'chief' ? { chiefMinLevel: level } : { umpireMinLevel: level };
  const changed = {
    ...problem,
    divisions: [...problem.divisions, { ...division, id, ...lowered }],
  };
  return withLock(
    withGame(changed, game.id, (own) => ({ ...own, division: id })),
    place,
    official,
  );
}

/** How far the asked window goes beyond what the official has said, in whole minutes. */
export function moreMinutes(official: Official, { from, to }: TimeWindow): number {
  const [fromMs, toMs] = [Date.parse(from), Date.parse(to)];
  const spans = official.available
    .map(
      (window) => [Math.max(fromMs, Date.parse(window.from)), Math.min(toMs, Date.parse(window.to))] as const,
    )
    .filter(([start, end]) => start < end)
    .sort((a, b) => a[0] - b[0]);
  let coveredMs = 0;
  let reachedMs = fromMs;
  for (const [start, end] of spans) {
    coveredMs += Math.max(0, end - Math.max(start, reachedMs));
    reachedMs = Math.max(reachedMs, end);
  }
  return Math.ceil((toMs - fromMs - coveredMs) / 60_000);
}
