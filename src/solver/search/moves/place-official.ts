import { NOBODY } from '../../compile/facts';
import { type ChangeList } from '../change-list';
import { collectClashes, handOn } from './eject';
import { type Neighbourhood } from './neighbourhood';
import { takeSeat } from './take-seat';

/** Without a clash the official still gives another seat away this often. */
const EXCHANGE_ANYWAY_SHARE = 0.5;
/** That other seat is of any day, not of the same one, this often. */
const OTHER_DAY_SHARE = 0.2;

/**
 * Gives a seat to another official. Whatever of that official's tour clashes with the game is ejected and
 * handed on: to the seat's former holder (a swap), to somebody else (a chain), or to nobody.
 * An open seat filled this way may leave another one open: the hole wanders until somebody free can fill it.
 */
export function placeOfficial(around: Neighbourhood, changes: ChangeList): boolean {
  const { state, random } = around;
  const seat = around.drawSeat();
  const official = around.drawOfficial(seat);
  if (official === NOBODY || official === state.holders[seat ^ 1]) return false;
  const former = state.holders[seat]!;
  takeSeat(around, changes, seat, official);
  const ejected: number[] = [];
  if (!collectClashes(around, seat >> 1, official, ejected)) return false;
  if (
    ejected.length === 0 &&
    (hasFullLoad(around, seat, official) || random.unit() < EXCHANGE_ANYWAY_SHARE)
  ) {
    const given = drawHeldSeat(around, seat, official);
    if (given >= 0) ejected.push(given);
  }
  return handOn(around, changes, ejected, former === NOBODY ? [] : [former]);
}

function hasFullLoad(around: Neighbourhood, seat: number, official: number): boolean {
  const { state } = around;
  const { slate } = state;
  if (state.gamesHeld[official]! >= slate.maxGames[official]!) return true;
  let count = 0;
  const { first, next } = state.tours;
  for (let held = first[state.tours.tourOf(official, seat >> 1)]!; held >= 0; held = next[held]!) count++;
  return count >= slate.maxGamesPerDay[official]!;
}

/** One of the official's movable seats, of the same day as a rule; −1 when there is none. */
function drawHeldSeat(around: Neighbourhood, seat: number, official: number): number {
  const { state, random } = around;
  const { slate } = state;
  const { first, next } = state.tours;
  let day = slate.gameDay[seat >> 1]!;
  const isDayFree = first[official * slate.dayCount + day]! < 0;
  if (slate.dayCount > 1 && (isDayFree || random.unit() < OTHER_DAY_SHARE))
    day = random.below(slate.dayCount);
  let chosen = -1;
  let seen = 0;
  for (let held = first[official * slate.dayCount + day]!; held >= 0; held = next[held]!) {
    if (!around.isMovable(held)) continue;
    // Each of the seats is equally likely to be the one that stays chosen.
    if (random.below(++seen) === 0) chosen = held;
  }
  return chosen;
}
