import { NOBODY } from '../../compile/facts';
import { type ChangeList } from '../change-list';
import { collectClashes, handOn } from './eject';
import { type Neighbourhood } from './neighbourhood';

/** Both seats of a game get somebody else at once: the only way to bring a minor to an empty game. */
export function fillCrew(around: Neighbourhood, changes: ChangeList): boolean {
  const seat = around.drawSeat();
  if (!around.isMovable(seat ^ 1)) return false;
  const own = around.drawOfficial(seat);
  const other = around.drawOfficial(seat ^ 1);
  if (own === NOBODY || other === NOBODY || own === other) return false;
  changes.add(seat, own);
  changes.add(seat ^ 1, other);
  const game = seat >> 1;
  const ejected: number[] = [];
  if (!collectClashes(around, game, own, ejected) || !collectClashes(around, game, other, ejected))
    return false;
  const { holders } = around.state;
  const formers = [holders[seat]!, holders[seat ^ 1]!].filter((former) => former !== NOBODY);
  return handOn(around, changes, ejected, formers);
}
