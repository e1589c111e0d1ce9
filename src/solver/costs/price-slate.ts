import { type CostBreakdown, COST_TERMS, type CostTerm } from '../answer';
import { type SlateFacts } from '../compile/facts';
import { gamesByOfficial, toursOf, type Holders } from '../tours';
import { COST_TERM_RULES } from './registry';

/** The cost of a slate, term by term, from scratch. */
export function priceSlate(facts: SlateFacts, holders: Holders): CostBreakdown {
  const cost = Object.fromEntries(COST_TERMS.map((term) => [term, 0])) as Record<CostTerm, number>;
  const { start, games } = gamesByOfficial(facts, holders);
  for (const term of COST_TERM_RULES) {
    let sum = 0;
    if (term.ofCrew !== undefined) {
      for (let game = 0; game < facts.gameCount; game++) {
        sum += term.ofCrew(facts, game, holders[2 * game]!, holders[2 * game + 1]!);
      }
    }
    for (let official = 0; official < facts.officialCount; official++) {
      const own = games.subarray(start[official], start[official + 1]);
      if (term.ofOfficial !== undefined) sum += term.ofOfficial(facts, official, own.length);
      if (term.ofTour === undefined || own.length === 0) continue;
      for (const tour of toursOf(facts, own)) sum += term.ofTour(facts, official, tour, tour.length);
    }
    cost[term.id] = sum;
  }
  return { total: COST_TERMS.reduce((sum, term) => sum + cost[term], 0), ...cost };
}
