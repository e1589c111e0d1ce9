import { findInRow } from '../compile/arrays';
import { NOBODY, type SlateFacts } from '../compile/facts';
import { type HardRule } from './hard-rule';

/** The official avoids one of the teams or the venue. */
export function hasGameConflict(facts: SlateFacts, official: number, game: number): boolean {
  return (
    findInRow(facts.avoidTeams, official, facts.gameHomeTeam[game]!) >= 0 ||
    findInRow(facts.avoidTeams, official, facts.gameAwayTeam[game]!) >= 0 ||
    findInRow(facts.avoidVenues, official, facts.gameVenue[game]!) >= 0
  );
}

export function avoidEachOther(facts: SlateFacts, one: number, other: number): boolean {
  return findInRow(facts.avoidOfficials, one, other) >= 0;
}

export const conflictsRule: HardRule = {
  id: 'H5',
  title: 'Free of conflicts',
  onSeat(facts, official, seat) {
    const game = seat >> 1;
    for (const team of [facts.gameHomeTeam[game]!, facts.gameAwayTeam[game]!]) {
      if (findInRow(facts.avoidTeams, official, team) >= 0) return `avoids team ${facts.teamIds[team]}`;
    }
    const venue = facts.gameVenue[game]!;
    if (findInRow(facts.avoidVenues, official, venue) >= 0) return `avoids venue ${facts.venueIds[venue]}`;
    return null;
  },
  onCrew(facts, _game, chief, umpire) {
    if (chief === NOBODY || umpire === NOBODY || !avoidEachOther(facts, chief, umpire)) return null;
    return `${facts.officialIds[chief]} and ${facts.officialIds[umpire]} avoid each other`;
  },
};
