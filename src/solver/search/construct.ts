import { type CompiledSlate } from '../compile/compiled-slate';
import { NOBODY, SEAT_FREE } from '../compile/facts';
import { ChangeList } from './change-list';
import { type SeatCandidates } from './seat-candidates';
import { type SlateState } from './slate-state';

/**
 * Fills open seats one game at a time, the games with the fewest possible officials first: the cheapest
 * legal chief, then the cheapest legal umpire beside them. Quick, legal, and a start for better ways.
 */
export function fillGreedily(state: SlateState, candidates: SeatCandidates): void {
  const { slate } = state;
  const changes = new ChangeList();
  for (const game of gamesByScarcity(slate)) {
    for (const seat of [2 * game, 2 * game + 1, 2 * game]) {
      if (state.holders[seat] !== NOBODY || slate.seatLock[seat] !== SEAT_FREE) continue;
      let best = NOBODY;
      let bestDelta = Infinity;
      for (const official of candidates.of(seat)) {
        changes.clear();
        changes.add(seat, official);
        const delta = state.evaluate(changes, bestDelta);
        if (delta >= bestDelta) continue;
        best = official;
        bestDelta = delta;
      }
      // Filling is what this is for, even where the weights make an open seat cheaper.
      if (best === NOBODY) continue;
      changes.clear();
      changes.add(seat, best);
      state.apply(changes, state.evaluate(changes));
    }
  }
}

function gamesByScarcity(slate: CompiledSlate): Int32Array {
  const { start } = slate.officialsOfGame;
  const choices = (game: number) => start[game + 1]! - start[game]!;
  const games = Int32Array.from({ length: slate.gameCount }, (_, game) => game);
  return games.sort(
    (a, b) => choices(a) - choices(b) || slate.gamePriority[b]! - slate.gamePriority[a]! || a - b,
  );
}
