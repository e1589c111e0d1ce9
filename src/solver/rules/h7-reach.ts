import { type SlateFacts } from '../compile/facts';
import { type HardRule } from './hard-rule';

export function isWithinReach(facts: SlateFacts, official: number, venue: number): boolean {
  return facts.outward.minutes[official * facts.venueCount + venue]! <= facts.maxHomeMinutes[official]!;
}

export const reachRule: HardRule = {
  id: 'H7',
  title: 'Reach from home',
  onSeat(facts, official, seat) {
    const venue = facts.gameVenue[seat >> 1]!;
    if (isWithinReach(facts, official, venue)) return null;
    const needed = facts.outward.minutes[official * facts.venueCount + venue]!;
    return `needs ${needed} minutes from home, accepts at most ${facts.maxHomeMinutes[official]}`;
  },
};
