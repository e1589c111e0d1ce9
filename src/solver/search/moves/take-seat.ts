import { type CompiledSlate } from '../../compile/compiled-slate';
import { NOBODY } from '../../compile/facts';
import { FIT_CHIEF, FIT_UMPIRE } from '../../compile/fit-bits';
import { isInOrder } from '../../rules/h9-order';
import { type ChangeList } from '../change-list';
import { type Neighbourhood } from './neighbourhood';

/** Where both ways are possible, partners change seats this often. */
const FLIP_SHARE = 0.15;

/**
 * Proposes the official for the seat, or, with the partner moving over, for the game's other seat: who is
 * chief often depends on who the two are.
 */
export function takeSeat(around: Neighbourhood, changes: ChangeList, seat: number, official: number): void {
  const { state, random } = around;
  const partner = state.holders[seat ^ 1]!;
  const mayFlip =
    partner !== NOBODY && partner !== official && around.isMovable(seat ^ 1) && !changes.has(seat ^ 1);
  if (
    mayFlip &&
    isPossible(state.slate, seat ^ 1, official, partner) &&
    (random.unit() < FLIP_SHARE || !isPossible(state.slate, seat, official, partner))
  ) {
    changes.add(seat, partner);
    changes.add(seat ^ 1, official);
  } else {
    changes.add(seat, official);
  }
}

/** Whether the two are fit for their seats and in order, the official in `seat` and the partner in the other. */
function isPossible(slate: CompiledSlate, seat: number, official: number, partner: number): boolean {
  const isChiefSeat = (seat & 1) === 0;
  const chief = isChiefSeat ? official : partner;
  const umpire = isChiefSeat ? partner : official;
  const game = seat >> 1;
  return (
    (slate.fit[chief * slate.gameCount + game]! & FIT_CHIEF) !== 0 &&
    (slate.fit[umpire * slate.gameCount + game]! & FIT_UMPIRE) !== 0 &&
    isInOrder(slate, chief, umpire)
  );
}
