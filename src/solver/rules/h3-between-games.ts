import { MINUTE_MS, type SlateFacts } from '../compile/facts';
import { type HardRule } from './hard-rule';

/**
 * Milliseconds to spare between two games that follow each other in a tour; negative when the second
 * cannot be reached. At one venue the official is already in the building, so that only the gap between
 * end and tip-off counts; elsewhere they must arrive before the next duty starts.
 */
export function spareMsBetween(facts: SlateFacts, earlier: number, later: number): number {
  const from = facts.gameVenue[earlier]!;
  const to = facts.gameVenue[later]!;
  if (from === to)
    return facts.tipOffMs[later]! - facts.endMs[earlier]! - facts.sameVenueGapMinutes * MINUTE_MS;
  const travelMinutes = facts.betweenVenues.minutes[from * facts.venueCount + to]!;
  return facts.dutyFromMs[later]! - facts.dutyToMs[earlier]! - travelMinutes * MINUTE_MS;
}

export const betweenGamesRule: HardRule = {
  id: 'H3',
  title: 'Time between games',
  onFollowing(facts, _official, earlier, later) {
    if (spareMsBetween(facts, earlier, later) >= 0) return null;
    const from = facts.gameVenue[earlier]!;
    const to = facts.gameVenue[later]!;
    const after = facts.gameIds[earlier]!;
    if (from === to) {
      const gap = Math.floor((facts.tipOffMs[later]! - facts.endMs[earlier]!) / MINUTE_MS);
      if (gap < 0) return `tips off ${-gap} minutes before game ${after} at the same venue ends`;
      return `needs ${facts.sameVenueGapMinutes} minutes after game ${after} at the same venue, has ${gap}`;
    }
    const needed = facts.betweenVenues.minutes[from * facts.venueCount + to]!;
    const given = Math.floor((facts.dutyFromMs[later]! - facts.dutyToMs[earlier]!) / MINUTE_MS);
    const way = `needs ${needed} minutes to get there from game ${after}`;
    return given >= 0
      ? `${way}, has ${given}`
      : `${way}, but its duty ends ${-given} minutes after this one starts`;
  },
};
