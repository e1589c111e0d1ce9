import { findInRow } from '../compile/arrays';
import { NOBODY, type SlateFacts } from '../compile/facts';
import { type CostTermRule } from './cost-term';

/** Recent games that the two worked together. */
export function gamesTogether(facts: SlateFacts, one: number, other: number): number {
  const entry = findInRow(facts.recentPartners, one, other);
  return entry < 0 ? 0 : facts.recentPartnerCounts[entry]!;
}

export const partnerRepeatTerm: CostTermRule = {
  id: 'partnerRepeat',
  title: 'Partners seen recently',
  ofCrew(facts, _game, chief, umpire) {
    if (chief === NOBODY || umpire === NOBODY || chief === umpire) return 0;
    return facts.weights.partnerRepeat * gamesTogether(facts, chief, umpire);
  },
};
