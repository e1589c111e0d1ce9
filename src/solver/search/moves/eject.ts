import { mayFollow } from '../../compile/compile-follow';
import { NOBODY } from '../../compile/facts';
import { type ChangeList } from '../change-list';
import { type Neighbourhood } from './neighbourhood';

/** An ejected seat goes to one of those who have just lost theirs. */
const SWAP_SHARE = 0.6;
/** Where a seat was open before, an ejected one may as well stay open: the hole wanders. */
const HOLE_WANDERS_SHARE = 0.5;

/** Adds the official's seats that cannot stand beside the game, as open; false when one of them may not move. */
export function ejectClashes(
  around: Neighbourhood,
  seat: number,
  official: number,
  changes: ChangeList,
): boolean {
  const { state } = around;
  const game = seat >> 1;
  const { first, next } = state.tours;
  for (let held = first[state.tours.tourOf(official, game)]!; held >= 0; held = next[held]!) {
    const other = held >> 1;
    const fits =
      other < game
        ? mayFollow(state.slate, other, game)
        : other > game && mayFollow(state.slate, game, other);
    if (fits || other === game) continue;
    if (!around.isMovable(held) || changes.isFull) return false;
    changes.add(held, NOBODY);
  }
  return true;
}

/**
 * Finds somebody for the ejected seats, which are those from `firstEjected` on: the former holders of the
 * seats that were taken, somebody else, or nobody. `formers` is used up.
 */
export function handOn(
  around: Neighbourhood,
  changes: ChangeList,
  firstEjected: number,
  formers: number[],
): boolean {
  const { random } = around;
  const holesMayWander = formers.length === 0;
  const ejectedEnd = changes.count;
  for (let i = firstEjected; i < ejectedEnd; i++) {
    if (formers.length > 0 && random.unit() < SWAP_SHARE) {
      changes.holders[i] = formers.pop()!;
    } else if (!holesMayWander || random.unit() >= HOLE_WANDERS_SHARE) {
      const next = around.drawOfficial(changes.seats[i]!);
      if (next === NOBODY) return false;
      changes.holders[i] = next;
    } else if (!releasePartner(around, changes, changes.seats[i]! ^ 1)) {
      return false;
    }
  }
  return true;
}

/** A minor cannot stay beside an open seat (H8) and is sent home as well. */
function releasePartner(around: Neighbourhood, changes: ChangeList, seat: number): boolean {
  const partner = around.state.holders[seat]!;
  if (partner === NOBODY || around.state.slate.officialMinor[partner] === 0 || changes.has(seat)) return true;
  if (!around.isMovable(seat) || changes.isFull) return false;
  changes.add(seat, NOBODY);
  return true;
}
