import type { SlateAnswer, SlateProblem } from '../solver';
import type { CrewsToJudge } from './judge-crews';
import { seatNames } from './seat-name';
import { namesIn } from './slate-problem-mapping';

/**
 * The crews of a slate once an answer is taken into it: games that the answer knows as it says, games that came
 * later as they stand. Games that take no part any more are left out.
 *
 * @param problem the slate as it is now
 * @param seats the working copy
 */
export function crewsOfProposal(
  answer: SlateAnswer,
  problem: SlateProblem,
  seats: readonly CrewsToJudge[],
): CrewsToJudge[] {
  const answered = new Map(answer.assignments.map((assignment) => [assignment.game, assignment]));
  return problem.games.flatMap(({ id: gameId }) => {
    const assignment = answered.get(gameId);
    if (assignment === undefined) return seats.filter((seat) => seat.gameId === gameId);
    return seatNames.map((seat) => ({ gameId, seat, officialId: assignment[seat] }));
  });
}

/** Numbers of the games that are new, elsewhere or at another time now than when a proposal was made, in order. */
export function gamesMovedSince(then: SlateProblem, now: SlateProblem): string[] {
  const before = new Map(then.games.map((game) => [game.id, game]));
  const names = namesIn(now).games;
  return now.games
    .filter((game) => {
      const old = before.get(game.id);
      return (
        old === undefined ||
        old.venue !== game.venue ||
        old.durationMinutes !== game.durationMinutes ||
        Date.parse(old.tipOff) !== Date.parse(game.tipOff)
      );
    })
    .map((game) => names[game.id] ?? game.id)
    .sort();
}
