import { NOBODY, type SlateFacts } from '../compile/facts';
import { type HardRule } from './hard-rule';

export function isMinor(facts: SlateFacts, official: number): boolean {
  return official !== NOBODY && facts.officialMinor[official] === 1;
}

/** A minor needs an adult in the other seat: neither another minor nor nobody. */
export function leavesMinorWithoutAdult(facts: SlateFacts, chief: number, umpire: number): boolean {
  if (isMinor(facts, chief)) return umpire === NOBODY || isMinor(facts, umpire);
  return chief === NOBODY && isMinor(facts, umpire);
}

export const minorsRule: HardRule = {
  id: 'H8',
  title: 'Minors beside an adult',
  onCrew(facts, _game, chief, umpire) {
    if (!leavesMinorWithoutAdult(facts, chief, umpire)) return null;
    if (chief !== NOBODY && umpire !== NOBODY) {
      return `${facts.officialIds[chief]} and ${facts.officialIds[umpire]} are both minors`;
    }
    const alone = chief === NOBODY ? umpire : chief;
    return `${facts.officialIds[alone]} is a minor and the other seat is open`;
  },
};
