import {
  compileSlate,
  judgeSlate,
  NOBODY,
  priceSlate,
  type CostBreakdown,
  type SlateProblem,
  type Violation,
} from '../solver';
import { seatNames, type SeatName } from './seat-name';
import { namesIn } from './slate-problem-mapping';

/** Who sits where; seats that are not named are open. */
export interface CrewsToJudge {
  readonly gameId: string;
  readonly seat: SeatName;
  readonly officialId: string | null;
}

/** What the hard rules and the cost say about crews. */
export interface CrewsJudgement {
  /** A sentence each; empty when every rule is kept. */
  readonly reasons: readonly string[];
  readonly violations: readonly Violation[];
  readonly cost: CostBreakdown;
}

/**
 * Judges crews by the hard rules and prices them, whoever made them. A person or game that takes no part in
 * the problem cannot be judged, and that is a reason too.
 */
export function judgeCrews(problem: SlateProblem, seats: readonly CrewsToJudge[]): CrewsJudgement {
  const slate = compileSlate(problem);
  const gameIndex = new Map(slate.gameIds.map((id, index) => [id, index]));
  const officialIndex = new Map(slate.officialIds.map((id, index) => [id, index]));
  const holders = new Int32Array(2 * slate.gameCount).fill(NOBODY);
  const strangers: string[] = [];
  for (const { gameId, seat, officialId } of seats) {
    if (officialId === null) continue;
    const game = gameIndex.get(gameId);
    const official = officialIndex.get(officialId);
    if (game === undefined) {
      strangers.push(`The ${seat} of game ${gameId} cannot be judged: the game takes no part in the slate.`);
    } else if (official === undefined) {
      strangers.push(`${officialId} cannot be ${seat} of game ${gameId}: takes no part in the slate.`);
    } else {
      holders[2 * game + seatNames.indexOf(seat)] = official;
    }
  }
  const violations = judgeSlate(slate, holders);
  const reasons = [...strangers, ...violations.map((violation) => violationSentence(violation))];
  return {
    reasons: reasons.map((reason) => withNames(reason, problem)),
    violations,
    cost: priceSlate(slate, holders),
  };
}

/** One broken rule as a sentence: who, in which game, what. */
export function violationSentence({ rule, game, officials, message }: Violation): string {
  const who = officials.length === 0 ? 'The crew' : officials.join(' and ');
  return `${who}${game === null ? '' : ` in game ${game}`}: ${message} (${rule}).`;
}

/** Puts names in the place of ids. */
export function withNames(text: string, problem: SlateProblem): string {
  const names = namesIn(problem);
  const nameById = new Map([...Object.entries(names.officials), ...Object.entries(names.games)]);
  return text.replaceAll(/[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}/g, (id) => nameById.get(id) ?? id);
}
