import { MINUTE_MS, type SlateFacts } from '../compile/facts';
import { type HardRule } from './hard-rule';

/** When the official leaves home for a game that is the first of a day. */
export function leavesHomeMs(facts: SlateFacts, official: number, game: number): number {
  const way = official * facts.venueCount + facts.gameVenue[game]!;
  return facts.dutyFromMs[game]! - facts.outward.minutes[way]! * MINUTE_MS;
}

/** When the official is home again after a game that is the last of a day. */
export function backHomeMs(facts: SlateFacts, official: number, game: number): number {
  const way = official * facts.venueCount + facts.gameVenue[game]!;
  return facts.dutyToMs[game]! + facts.homeward.minutes[way]! * MINUTE_MS;
}

export const restRule: HardRule = {
  id: 'H10',
  title: 'Rest between days',
  onRest(facts, official, earlier, later) {
    const restMs = leavesHomeMs(facts, official, later) - backHomeMs(facts, official, earlier);
    if (restMs >= facts.minRestMinutes * MINUTE_MS) return null;
    const given = Math.floor(restMs / MINUTE_MS);
    const rest = `needs ${facts.minRestMinutes} minutes of rest at home after game ${facts.gameIds[earlier]}`;
    return given >= 0
      ? `${rest}, has ${given}`
      : `${rest}, but would have to leave ${-given} minutes before being back`;
  },
};
