import { NOBODY } from '../../compile/facts';
import { type ChangeList } from '../change-list';
import { type Neighbourhood } from './neighbourhood';

/**
 * Two officials exchange the rest of their day from a game on, or the whole day; the other one may be
 * free, and then simply takes over.
 */
export function exchangeTours(around: Neighbourhood, changes: ChangeList): boolean {
  const { state, random } = around;
  const seat = around.drawSeat();
  const one = state.holders[seat]!;
  if (one === NOBODY || around.region.isOfficialMovable[one] === 0) return false;
  const other = around.drawOfficial(seat);
  if (other === NOBODY) return false;
  const wholeDay = random.unit() < 0.3;
  const fromSeat = wholeDay ? 0 : 2 * (seat >> 1);
  const untilSeat = random.unit() < 0.3 ? 2 * (seat >> 1) + 2 : Infinity;
  return (
    handOver(around, changes, { from: one, to: other, game: seat >> 1, fromSeat, untilSeat }) &&
    handOver(around, changes, { from: other, to: one, game: seat >> 1, fromSeat, untilSeat })
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
  const { tours } = around.state;
  for (let seat = tours.first[tours.tourOf(from, game)]!; seat >= 0; seat = tours.next[seat]!) {
    if (seat < fromSeat || seat >= untilSeat) continue;
    if (!around.isMovable(seat) || changes.isFull) return false;
    changes.add(seat, to);
  }
  return true;
}
