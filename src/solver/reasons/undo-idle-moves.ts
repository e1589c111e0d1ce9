import { type CompiledSlate } from '../compile';
import { NOBODY } from '../compile/facts';
import { ChangeList } from '../search/change-list';
import { SlateState } from '../search/slate-state';
import { type Holders } from '../tours';

/** Rounding alone is no gain. */
const GAIN_MIN = 1e-7;

/**
 * Takes back moves of a search that gained nothing: sets of seats whose officials only changed among themselves
 * return to what they were, where that is legal and no dearer. Both slates must be legal.
 */
export function undoIdleMoves(slate: CompiledSlate, before: Holders, after: Holders): Holders {
  const state = new SlateState(slate, after);
  const changes = new ChangeList();
  for (const seats of connectedMoves(before, after)) {
    if (seats.length > changes.seats.length) continue;
    changes.clear();
    for (const seat of seats) changes.add(seat, before[seat]!);
    const delta = state.evaluate(changes);
    if (delta <= GAIN_MIN) state.apply(changes, delta);
  }
  return state.holders.slice();
}

/** Seats that changed hands, grouped so that no official of one group is in another. */
function connectedMoves(before: Holders, after: Holders): readonly (readonly number[])[] {
  const seatsOf = new Map<number, number[]>();
  const moved = [...before.keys()].filter((seat) => before[seat] !== after[seat]);
  for (const seat of moved) {
    for (const official of [before[seat]!, after[seat]!]) {
      if (official !== NOBODY) seatsOf.set(official, [...(seatsOf.get(official) ?? []), seat]);
    }
  }
  const grouped = new Set<number>();
  return moved.flatMap((first) => {
    if (grouped.has(first)) return [];
    grouped.add(first);
    const group = [first];
    for (const seat of group) {
      for (const official of [before[seat]!, after[seat]!]) {
        for (const other of seatsOf.get(official) ?? []) {
          if (grouped.has(other)) continue;
          grouped.add(other);
          group.push(other);
        }
      }
    }
    return [group];
  });
}
