import { type Game, type Official, type SeatName, type SlateProblem } from '../problem';

/** The problem with one official described otherwise. */
export function withOfficial(
  problem: SlateProblem,
  id: string,
  change: (official: Official) => Official,
): SlateProblem {
  return {
    ...problem,
    officials: problem.officials.map((official) => (official.id === id ? change(official) : official)),
  };
}

/** The problem with one game described otherwise. */
export function withGame(problem: SlateProblem, id: string, change: (game: Game) => Game): SlateProblem {
  return { ...problem, games: problem.games.map((game) => (game.id === id ? change(game) : game)) };
}

/** The problem with the official locked into the seat. */
export function withLock(
  problem: SlateProblem,
  { game, seat }: { readonly game: string; readonly seat: SeatName },
  official: string,
): SlateProblem {
  return withGame(problem, game, (own) => ({ ...own, locked: { ...own.locked, [seat]: official } }));
}

/**
 * The problem without one official's work: never available, locked nowhere. They stay on the roster, so that
 * the balance term and published seats count as before.
 */
export function withoutOfficial(problem: SlateProblem, id: string): SlateProblem {
  const left = withOfficial(problem, id, (official) => ({ ...official, available: [] }));
  return { ...left, games: left.games.map((game) => unlockedFrom(game, id)) };
}

function unlockedFrom(game: Game, id: string): Game {
  const { locked, ...rest } = game;
  if (locked === undefined) return game;
  const kept = Object.fromEntries(Object.entries(locked).filter(([, official]) => official !== id));
  return Object.keys(kept).length === 0 ? rest : { ...rest, locked: kept };
}
