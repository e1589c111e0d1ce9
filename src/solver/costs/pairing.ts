import { NOBODY, type SlateFacts } from '../compile/facts';
import { type CostTermRule } from './cost-term';

/** The division's price of a level gap; gaps beyond its table take the last entry. */
export function pairingCost(
  facts: SlateFacts,
  division: number,
  chiefLevel: number,
  umpireLevel: number,
): number {
  const first = facts.pairingStart[division]!;
  const lastGap = facts.pairingStart[division + 1]! - first - 1;
  const gap = Math.max(0, chiefLevel - umpireLevel);
  return facts.pairingCost[first + Math.min(gap, lastGap)]!;
}

export const pairingTerm: CostTermRule = {
  id: 'pairing',
  title: 'Level gap of the crew',
  ofCrew(facts, game, chief, umpire) {
    if (chief === NOBODY || umpire === NOBODY) return 0;
    return pairingCost(
      facts,
      facts.gameDivision[game]!,
      facts.officialLevel[chief]!,
      facts.officialLevel[umpire]!,
    );
  },
};
