import { findInRow } from '../compile/arrays';
import { NOBODY, type SlateFacts } from '../compile/facts';
import { type CostTermRule } from './cost-term';

/** Recent games in which the official saw either team of this game (a game against itself counts twice). */
export function seenTeamGames(facts: SlateFacts, official: number, game: number): number {
  const home = findInRow(facts.recentTeams, official, facts.gameHomeTeam[game]!);
  const away = findInRow(facts.recentTeams, official, facts.gameAwayTeam[game]!);
  return (home < 0 ? 0 : facts.recentTeamCounts[home]!) + (away < 0 ? 0 : facts.recentTeamCounts[away]!);
}

export const teamRepeatTerm: CostTermRule = {
  id: 'teamRepeat',
  title: 'Teams seen recently',
  ofCrew(facts, game, chief, umpire) {
    const ofChief = chief === NOBODY ? 0 : seenTeamGames(facts, chief, game);
    const ofUmpire = umpire === NOBODY ? 0 : seenTeamGames(facts, umpire, game);
    return facts.weights.teamRepeat * (ofChief + ofUmpire);
  },
};
