import { NOBODY, type SlateFacts } from '../compile/facts';
import { type HardRule } from './hard-rule';

/** The chief is at least as experienced as the umpire; an open seat breaks no order. */
export function isInOrder(facts: SlateFacts, chief: number, umpire: number): boolean {
  if (chief === NOBODY || umpire === NOBODY) return true;
  return facts.officialLevel[chief]! >= facts.officialLevel[umpire]!;
}

export const orderRule: HardRule = {
  id: 'H9',
  title: 'Chief at least as experienced as the umpire',
  onCrew(facts, _game, chief, umpire) {
    if (isInOrder(facts, chief, umpire)) return null;
    return `the chief has level ${facts.officialLevel[chief]}, below the umpire's level ${facts.officialLevel[umpire]}`;
  },
};
