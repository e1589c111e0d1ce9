import { type RuleId } from '../answer';
import { type SlateFacts } from '../compile/facts';

/**
 * A rule that every legal slate keeps. A rule answers the questions that concern it and leaves the others
 * out; each answer is null when the rule is kept, else a sentence in plain words with its figures.
 * Officials, games and seats are indexes into `facts`; an open seat is `NOBODY`.
 *
 * The search, the locks, explanations and repairs all ask these same questions.
 */
export interface HardRule {
  /** Permanent; it appears in answers and on pages. */
  readonly id: RuleId;
  /** What the rule is about, for a heading. */
  readonly title: string;
  /** May this official hold this seat, whatever else they do and whoever stands beside them? */
  onSeat?(facts: SlateFacts, official: number, seat: number): string | null;
  /** May these two work this game together? Either may be `NOBODY`. */
  onCrew?(facts: SlateFacts, game: number, chief: number, umpire: number): string | null;
  /** May the seat be left like this, given its lock? */
  onHolder?(facts: SlateFacts, seat: number, holder: number): string | null;
  /** May the official go straight from one game to a later one of the same day? */
  onFollowing?(facts: SlateFacts, official: number, earlier: number, later: number): string | null;
  /** May the official work both of these games, on different days? */
  onRest?(facts: SlateFacts, official: number, earlier: number, later: number): string | null;
  /** May the official work this many games? */
  onLoad?(facts: SlateFacts, official: number, load: Load): string | null;
}

export interface Load {
  /** Games of one day; 0 when it is the slate that is asked about. */
  readonly gamesOnDay: number;
  /** 0 when it is the day that is asked about. */
  readonly gamesInSlate: number;
}
