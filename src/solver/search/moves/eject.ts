import { mayFollow } from '../../compile/compile-follow';
import { NOBODY } from '../../compile/facts';
import { type ChangeList } from '../change-list';
import { type Neighbourhood } from './neighbourhood';
import { takeSeat } from './take-seat';

/** An ejected seat goes to one of those who have just lost theirs. */
const SWAP_SHARE = 0.6;
/** Where a seat was open before, an ejected one may as well stay open: the hole wanders. */
const HOLE_WANDERS_SHARE = 0.5;

/** Collects the official's seats that cannot stand beside the game; false when one of them may not move. */
export function collectClashes(
  around: Neighbourhood,
  game: number,
  official: number,
  ejected: number[],
): boolean {
  const { state } = around;
  const { first, next } = state.tours;
  for (let held = first[state.tours.tourOf(official, game)]!; held >= 0; held = next[held]!) {
    const other = held >> 1;
    if (other === game) continue;
    const fits = other < game ? mayFollow(state.slate, other, game) : mayFollow(state.slate, game, other);
    if (fits) continue;
    if (!around.isMovable(held)) return false;
    ejected.push(held);
  }
  return true;
}

/**
 * Finds somebody for the ejected seats: those who lost theirs to the move (`formers`, used up from the end),
 * somebody else, or nobody. Without formers the move began at an open seat, which may then wander.
 */
export function handOn(
  around: Neighbourhood,
  changes: ChangeList,
  ejected: readonly number[],
  formers: number[],
): boolean {
  const { random } = around;
  const holesMayWander = formers.length === 0;
  for (const seat of ejected) {
    // The partner of an ejected minor, or a second clash in one game, may have been dealt with already.
    if (changes.has(seat)) continue;
    if (!changes.hasRoom) return false;
    if (formers.length > 0 && random.unit() < SWAP_SHARE) {
      takeSeat(around, changes, seat, formers.pop()!);
    } else if (!holesMayWander || random.unit() >= HOLE_WANDERS_SHARE) {
      const next = around.drawOfficial(seat);
      if (next === NOBODY) return false;
      takeSeat(around, changes, seat, next);
    } else {
      changes.add(seat, NOBODY);
      if (!releaseMinor(around, changes, seat ^ 1)) return false;
    }
  }
  return true;
}

/** A minor cannot stay beside an open seat (H8) and is sent home as well. */
function releaseMinor(around: Neighbourhood, changes: ChangeList, seat: number): boolean {
  const partner = around.state.holders[seat]!;
  if (partner === NOBODY || around.state.slate.officialMinor[partner] === 0 || changes.has(seat)) return true;
  if (!around.isMovable(seat)) return false;
  changes.add(seat, NOBODY);
  return true;
}
