import { NOBODY, type SlateFacts } from '../compile/facts';
import { type CostTermRule } from './cost-term';

/** Price of the seat not being held by the official published for it. */
export function changeCost(facts: SlateFacts, seat: number, holder: number): number {
  const published = facts.seatPublished[seat]!;
  return published === NOBODY || published === holder ? 0 : facts.weights.change;
}

export const changeTerm: CostTermRule = {
  id: 'change',
  title: 'Published seats that change hands',
  ofCrew(facts, game, chief, umpire) {
    return changeCost(facts, 2 * game, chief) + changeCost(facts, 2 * game + 1, umpire);
  },
};
