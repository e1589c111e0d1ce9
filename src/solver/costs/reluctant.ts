import { NOBODY, type SlateFacts } from '../compile/facts';
import { type CostTermRule } from './cost-term';

/** The duty overlaps a window that the official would rather keep free; touching it is no overlap. */
export function isReluctant(facts: SlateFacts, official: number, game: number): boolean {
  for (let w = facts.reluctantStart[official]!; w < facts.reluctantStart[official + 1]!; w++) {
    const overlaps =
      facts.reluctantFromMs[w]! < facts.dutyToMs[game]! && facts.dutyFromMs[game]! < facts.reluctantToMs[w]!;
    if (overlaps) return true;
  }
  return false;
}

export const reluctantTerm: CostTermRule = {
  id: 'reluctant',
  title: 'Windows rather kept free',
  ofCrew(facts, game, chief, umpire) {
    const reluctantSeats =
      (chief !== NOBODY && isReluctant(facts, chief, game) ? 1 : 0) +
      (umpire !== NOBODY && isReluctant(facts, umpire, game) ? 1 : 0);
    return facts.weights.reluctant * reluctantSeats;
  },
};
