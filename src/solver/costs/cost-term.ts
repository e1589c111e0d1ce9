import { type CostTerm } from '../answer';
import { type SlateFacts } from '../compile/facts';

/**
 * One term of the cost. A term answers the questions that concern it; the total is the sum over all
 * crews, tours and officials. Officials, games and seats are indexes into `facts`; an open seat is `NOBODY`.
 */
export interface CostTermRule {
  readonly id: CostTerm;
  /** What the term stands for, for a heading. */
  readonly title: string;
  /** Cost of a game with these two; either may be `NOBODY`. */
  ofCrew?(facts: SlateFacts, game: number, chief: number, umpire: number): number;
  /** Cost of one official's games of one day, ascending; `count` games of `tour` are looked at, at least one. */
  ofTour?(facts: SlateFacts, official: number, tour: ArrayLike<number>, count: number): number;
  /** Cost of an official having this many games in the slate. */
  ofOfficial?(facts: SlateFacts, official: number, gamesInSlate: number): number;
}
