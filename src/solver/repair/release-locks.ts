import { type CompiledSlate } from '../compile/compiled-slate';
import { NOBODY, SEAT_FREE } from '../compile/facts';
import { SEAT_NAMES, type Game, type SlateProblem } from '../problem';
import { isPossible } from './fit';

/**
 * A lock is the assignor's wish for the slate as it was. Where its official cannot hold the seat any more,
 * whatever the rest of the slate looks like, the lock is let go; all other locks stay.
 */
export function releaseLocks(
  problem: SlateProblem,
  slate: CompiledSlate,
): { readonly problem: SlateProblem; readonly slate: CompiledSlate; readonly released: readonly number[] } {
  const released = [...slate.seatLock.keys()].filter((seat) => {
    const lock = slate.seatLock[seat]!;
    return lock > NOBODY && !isPossible(slate, lock, seat);
  });
  if (released.length === 0) return { problem, slate, released };
  const seatLock = slate.seatLock.slice();
  for (const seat of released) seatLock[seat] = SEAT_FREE;
  const sidesByGame = new Map<string, number[]>();
  for (const seat of released) {
    const id = slate.gameIds[seat >> 1]!;
    sidesByGame.set(id, [...(sidesByGame.get(id) ?? []), seat & 1]);
  }
  const games = problem.games.map((game) => withoutLocks(game, sidesByGame.get(game.id) ?? []));
  return { problem: { ...problem, games }, slate: { ...slate, seatLock }, released };
}

function withoutLocks(game: Game, sides: readonly number[]): Game {
  if (sides.length === 0) return game;
  const { locked = {}, ...rest } = game;
  const kept = Object.entries(locked).filter(([name]) => !sides.some((side) => SEAT_NAMES[side] === name));
  return kept.length === 0 ? rest : { ...rest, locked: Object.fromEntries(kept) };
}
