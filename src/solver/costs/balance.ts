import { type SlateFacts } from '../compile/facts';
import { type CostTermRule } from './cost-term';

/** The squared distance from the season target, priced. */
export function balanceCost(facts: SlateFacts, official: number, gamesInSlate: number): number {
  const distance = facts.priorGames[official]! + gamesInSlate - facts.targetGames[official]!;
  return facts.weights.balance * distance * distance;
}

export const balanceTerm: CostTermRule = {
  id: 'balance',
  title: 'Distance from the season target',
  ofOfficial: balanceCost,
};
