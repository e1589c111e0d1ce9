import { type HardRule } from './hard-rule';

export const loadRule: HardRule = {
  id: 'H4',
  title: 'Games per day and slate',
  onLoad(facts, official, { gamesOnDay, gamesInSlate }) {
    const dayMax = facts.maxGamesPerDay[official]!;
    if (gamesOnDay > dayMax) return `would work ${gamesOnDay} games on one day, at most ${dayMax}`;
    const slateMax = facts.maxGames[official]!;
    if (gamesInSlate > slateMax) return `would work ${gamesInSlate} games in the slate, at most ${slateMax}`;
    return null;
  },
};
