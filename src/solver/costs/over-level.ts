import { NOBODY, type SlateFacts } from '../compile/facts';
import { type CostTermRule } from './cost-term';

/** Price of an official above the seat's target level. */
export function overLevelCost(facts: SlateFacts, official: number, seat: number): number {
  const target = facts.divisionTargetLevel[2 * facts.gameDivision[seat >> 1]! + (seat & 1)]!;
  return facts.weights.overLevel * Math.max(0, facts.officialLevel[official]! - target);
}

export const overLevelTerm: CostTermRule = {
  id: 'overLevel',
  title: 'Above the level the seat needs',
  ofCrew(facts, game, chief, umpire) {
    return (
      (chief === NOBODY ? 0 : overLevelCost(facts, chief, 2 * game)) +
      (umpire === NOBODY ? 0 : overLevelCost(facts, umpire, 2 * game + 1))
    );
  },
};
