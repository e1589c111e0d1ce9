import { NOBODY, SEAT_KEPT_OPEN, type SlateFacts } from '../compile/facts';
import { type CostTermRule } from './cost-term';

/** Price of leaving the seat open; nothing when it is kept open on purpose. */
export function openSeatCost(facts: SlateFacts, seat: number): number {
  if (facts.seatLock[seat] === SEAT_KEPT_OPEN) return 0;
  return facts.weights.openSeat * facts.gamePriority[seat >> 1]!;
}

export const openTerm: CostTermRule = {
  id: 'open',
  title: 'Open seats',
  ofCrew(facts, game, chief, umpire) {
    return (
      (chief === NOBODY ? openSeatCost(facts, 2 * game) : 0) +
      (umpire === NOBODY ? openSeatCost(facts, 2 * game + 1) : 0)
    );
  },
};
