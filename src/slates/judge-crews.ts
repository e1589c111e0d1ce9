import { checkAnswer, COST_TERMS, type CostBreakdown, type SlateProblem, type Violation } from '../solver';
import { groupedBy } from './grouped-by';
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

const noCost = Object.fromEntries(['total', ...COST_TERMS].map((term) => [term, 0])) as CostBreakdown;

/**
 * Judges crews by the hard rules and prices them, whoever made them, with the solver's independent checker. A
 * person or game that takes no part in the problem cannot be judged, and that is a reason too.
 */
export function judgeCrews(problem: SlateProblem, seats: readonly CrewsToJudge[]): CrewsJudgement {
  const gameIds = new Set(problem.games.map(({ id }) => id));
  const officialIds = new Set(problem.officials.map(({ id }) => id));
  const filled = seats.filter((seat) => seat.officialId !== null);
  const strangers = filled.flatMap(({ gameId, seat, officialId }) => {
    if (!gameIds.has(gameId)) return [`Game ${gameId} has a ${seat}, but takes no part in the slate.`];
    if (officialId !== null && officialIds.has(officialId)) return [];
    return [`${officialId} cannot be ${seat} of game ${gameId}: takes no part in the slate.`];
  });
  const seatsByGame = groupedBy(filled, ({ gameId }) => gameId);
  const holder = (gameId: string, name: SeatName) => {
    const id = seatsByGame.get(gameId)?.find(({ seat }) => seat === name)?.officialId ?? null;
    return id !== null && officialIds.has(id) ? id : null;
  };
  const [chief, umpire] = seatNames;
  const report = checkAnswer(problem, {
    format: 'slate-answer/1',
    problem: problem.name,
    assignments: problem.games.map(({ id }) => ({
      game: id,
      chief: holder(id, chief),
      umpire: holder(id, umpire),
    })),
    // The checker prices from scratch; what is stated here is not looked at.
    cost: noCost,
    bound: null,
    seconds: 0,
    status: 'feasible',
  });
  if (report.cost === null) {
    throw new Error(
      `The crews cannot be judged: ${report.faults.map(({ problem: words }) => words).join('; ')}`,
    );
  }
  const reasons = [...strangers, ...report.violations.map(violationSentence)];
  return {
    reasons: reasons.map((reason) => withNames(reason, problem)),
    violations: report.violations,
    cost: report.cost,
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
