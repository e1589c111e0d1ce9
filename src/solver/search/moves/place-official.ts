import { mayFollow } from '../../compile/compile-follow';
import { NOBODY } from '../../compile/facts';
import { type ChangeList } from '../change-list';
import { type Neighbourhood } from './neighbourhood';

/** Out of how many draws without a clash the official still gives a seat away. */
const EXCHANGE_ANYWAY_SHARE = 0.5;
/** An ejected seat goes to the holder of the seat that was taken. */
const SWAP_SHARE = 0.6;

/**
 * Gives a seat to another official. Whatever of that official's tour clashes with the game is ejected and
 * handed on: to the seat's former holder (a swap), to somebody else (a chain), or to nobody.
 * An open seat filled this way may leave another one open: the hole wanders until somebody free can fill it.
 */
export function placeOfficial(around: Neighbourhood, changes: ChangeList): boolean {
  const { state, random } = around;
  const seat = around.drawSeat();
  const official = around.drawOfficial(seat);
  if (official === NOBODY) return false;
  const former = state.holders[seat]!;
  changes.add(seat, official);
  let formerIsFree = former !== NOBODY && around.region.isOfficialMovable[former] === 1;
  const clashes = ejectClashes(around, seat, official, changes);
  if (clashes < 0) return false;
  if (clashes === 0 && (fullLoad(around, seat, official) || random.unit() < EXCHANGE_ANYWAY_SHARE)) {
    const given = drawHeldSeat(around, seat, official);
    if (given >= 0) changes.add(given, NOBODY);
  }
  for (let i = 1; i < changes.count; i++) {
    const ejected = changes.seats[i]!;
    if (formerIsFree && random.unit() < SWAP_SHARE) {
      changes.holders[i] = former;
      formerIsFree = false;
    } else if (former !== NOBODY || random.unit() < 0.5) {
      const next = around.drawOfficial(ejected);
      if (next === NOBODY || next === former || next === official) return false;
      changes.holders[i] = next;
    }
  }
  return true;
}

/** Adds the official's seats that cannot stand beside the game, as open; −1 when one of them may not move. */
function ejectClashes(around: Neighbourhood, seat: number, official: number, changes: ChangeList): number {
  const { state } = around;
  const game = seat >> 1;
  const before = changes.count;
  const { first, next } = state.tours;
  for (let held = first[state.tours.tourOf(official, game)]!; held >= 0; held = next[held]!) {
    const other = held >> 1;
    const fits =
      other < game
        ? mayFollow(state.slate, other, game)
        : other > game && mayFollow(state.slate, game, other);
    if (fits) continue;
    if (!around.isMovable(held) || changes.isFull) return -1;
    changes.add(held, NOBODY);
  }
  return changes.count - before;
}

function fullLoad(around: Neighbourhood, seat: number, official: number): boolean {
  const { state } = around;
  const { slate } = state;
  if (state.gamesHeld[official]! >= slate.maxGames[official]!) return true;
  let count = 0;
  const { first, next } = state.tours;
  for (let held = first[state.tours.tourOf(official, seat >> 1)]!; held >= 0; held = next[held]!) count++;
  return count >= slate.maxGamesPerDay[official]!;
}

/** One of the official's movable seats, of the same day if there is one; −1 when there is none. */
function drawHeldSeat(around: Neighbourhood, seat: number, official: number): number {
  const { state, random } = around;
  const { slate } = state;
  const { first, next } = state.tours;
  let day = slate.gameDay[seat >> 1]!;
  const dayIsBusy = first[official * slate.dayCount + day]! >= 0;
  if (slate.dayCount > 1 && (!dayIsBusy || random.unit() < 0.2)) day = random.below(slate.dayCount);
  let chosen = -1;
  let seen = 0;
  for (let held = first[official * slate.dayCount + day]!; held >= 0; held = next[held]!) {
    if (!around.isMovable(held) || held === seat) continue;
    // Each of the seats is equally likely to be the one that stays chosen.
    if (random.below(++seen) === 0) chosen = held;
  }
  return chosen;
}
