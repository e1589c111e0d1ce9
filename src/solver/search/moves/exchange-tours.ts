import { NOBODY } from '../../compile/facts';
import { type ChangeList } from '../change-list';
import { type Neighbourhood } from './neighbourhood';
import { takeSeat } from './take-seat';

/** The whole day, not the day from a game on, changes hands this often. */
const WHOLE_DAY_SHARE = 0.3;
/** Only the one game of the first official, against the rest of the other's day. */
const ONE_GAME_SHARE = 0.2;
/** The other's games go to a third official. */
const THIRD_SHARE = 0.3;

/**
 * Officials exchange the rest of their day from a game on, or the whole day. The other one may be free, and
 * then simply takes over; or a third one takes over from the other.
 */
export function exchangeTours(around: Neighbourhood, changes: ChangeList): boolean {
  const { state, random } = around;
  const seat = around.drawSeat();
  const one = state.holders[seat]!;
  if (one === NOBODY) return false;
  const other = around.drawOfficial(seat);
  if (other === NOBODY) return false;
  const game = seat >> 1;
  const fromSeat = random.unit() < WHOLE_DAY_SHARE ? 0 : 2 * game;
  const untilSeat = random.unit() < ONE_GAME_SHARE ? 2 * game + 2 : Infinity;
  let last = one;
  if (random.unit() < THIRD_SHARE) {
    const handedOn = firstSeatFrom(around, other, game, fromSeat);
    last = handedOn < 0 ? NOBODY : around.drawOfficial(handedOn);
    if (last === NOBODY || last === one) return false;
  }
  return (
    handOver(around, changes, { from: one, to: other, game, fromSeat, untilSeat }) &&
    handOver(around, changes, { from: other, to: last, game, fromSeat, untilSeat: Infinity })
  );
}

interface HandOver {
  readonly from: number;
  readonly to: number;
  /** Any game of the day. */
  readonly game: number;
  /** Seats of this number on … */
  readonly fromSeat: number;
  /** … and below this one change hands. */
  readonly untilSeat: number;
}

function handOver(
  around: Neighbourhood,
  changes: ChangeList,
  { from, to, game, fromSeat, untilSeat }: HandOver,
): boolean {
  const { tours, holders } = around.state;
  for (let seat = tours.first[tours.tourOf(from, game)]!; seat >= 0; seat = tours.next[seat]!) {
    if (seat < fromSeat || seat >= untilSeat || changes.has(seat)) continue;
    if (!around.isMovable(seat) || !changes.hasRoom) return false;
    // Two who work one game and exchange it change seats; anybody else may also push the partner over.
    if (holders[seat ^ 1] === to && around.isMovable(seat ^ 1)) {
      changes.add(seat, to);
      changes.add(seat ^ 1, from);
    } else {
      takeSeat(around, changes, seat, to);
    }
  }
  return true;
}

function firstSeatFrom(around: Neighbourhood, official: number, game: number, fromSeat: number): number {
  const { tours } = around.state;
  let seat = tours.first[tours.tourOf(official, game)]!;
  while (seat >= 0 && seat < fromSeat) seat = tours.next[seat]!;
  return seat;
}
