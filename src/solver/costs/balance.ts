import { type CostTermRule } from './cost-term';

export const balanceTerm: CostTermRule = {
  id: 'balance',
  title: 'Distance from the season target',
  ofOfficial(facts, official, gamesInSlate) {
    const distance = facts.priorGames[official]! + gamesInSlate - facts.targetGames[official]!;
    return facts.weights.balance * distance * distance;
  },
};
