import { NOBODY } from '../../compile/facts';
import { type ChangeList } from '../change-list';
import { type Neighbourhood } from './neighbourhood';

/** Chief and umpire of one game change places. */
export function swapCrew(around: Neighbourhood, changes: ChangeList): boolean {
  const seat = around.drawSeat();
  const { holders } = around.state;
  const own = holders[seat]!;
  const other = holders[seat ^ 1]!;
  if (own === other || !around.isMovable(seat ^ 1)) return false;
  if (own === NOBODY && other === NOBODY) return false;
  changes.add(seat, other);
  changes.add(seat ^ 1, own);
  return true;
}
