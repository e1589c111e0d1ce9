import { NOBODY, type SlateFacts } from '../compile/facts';
import { type HardRule } from './hard-rule';

/** Level and, for the chief, the permission that the seat asks for. */
export function isQualified(facts: SlateFacts, official: number, seat: number): boolean {
  const isChiefSeat = (seat & 1) === 0;
  if (isChiefSeat && facts.officialMayBeChief[official] === 0) return false;
  return facts.officialLevel[official]! >= minLevel(facts, seat);
}

function minLevel(facts: SlateFacts, seat: number): number {
  return facts.divisionMinLevel[2 * facts.gameDivision[seat >> 1]! + (seat & 1)]!;
}

export const seatRule: HardRule = {
  id: 'H1',
  title: 'Qualified for the seat',
  onSeat(facts, official, seat) {
    if (isQualified(facts, official, seat)) return null;
    const seatName = (seat & 1) === 0 ? 'chief' : 'umpire';
    const level = facts.officialLevel[official]!;
    const asked = minLevel(facts, seat);
    if (level >= asked) return 'may not be chief';
    const short = `has level ${level}, the ${seatName} seat asks for level ${asked}`;
    return seatName === 'chief' && facts.officialMayBeChief[official] === 0
      ? `${short}, and may not be chief`
      : short;
  },
  onCrew(_facts, _game, chief, umpire) {
    return chief !== NOBODY && chief === umpire ? 'holds both seats of the game' : null;
  },
};
