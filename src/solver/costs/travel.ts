import { type SlateFacts } from '../compile/facts';
import { type CostTermRule } from './cost-term';

/** Metres of a tour: home, each game in turn, home. */
export function tourMetres(
  facts: SlateFacts,
  official: number,
  tour: ArrayLike<number>,
  count: number,
): number {
  const home = official * facts.venueCount;
  let venue = facts.gameVenue[tour[0]!]!;
  let metres = facts.outward.metres[home + venue]!;
  for (let i = 1; i < count; i++) {
    const next = facts.gameVenue[tour[i]!]!;
    metres += facts.betweenVenues.metres[venue * facts.venueCount + next]!;
    venue = next;
  }
  return metres + facts.homeward.metres[home + venue]!;
}

/** Price of a tour of at least one game. */
export function tourCost(
  facts: SlateFacts,
  official: number,
  tour: ArrayLike<number>,
  count: number,
): number {
  return (facts.weights.travelPerKm * tourMetres(facts, official, tour, count)) / 1000;
}

export const travelTerm: CostTermRule = {
  id: 'travel',
  title: 'Kilometres driven',
  ofTour: tourCost,
};
