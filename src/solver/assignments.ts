import { type Assignment } from './answer';
import { type SlateFacts, NOBODY } from './compile/facts';
import { type SlateProblem } from './problem';
import { type Holders } from './tours';

/** Every game once, in the order of the problem. */
export function writeAssignments(problem: SlateProblem, facts: SlateFacts, holders: Holders): Assignment[] {
  const gameIndexById = new Map(facts.gameIds.map((id, index) => [id, index]));
  const idOf = (holder: number) => (holder === NOBODY ? null : facts.officialIds[holder]!);
  return problem.games.map(({ id }) => {
    const game = gameIndexById.get(id)!;
    return { game: id, chief: idOf(holders[2 * game]!), umpire: idOf(holders[2 * game + 1]!) };
  });
}

/** The holders that assignments name; games that are not listed stay open, ids of nobody are an open seat. */
export function readAssignments(facts: SlateFacts, assignments: readonly Assignment[]): Holders {
  const gameIndexById = new Map(facts.gameIds.map((id, index) => [id, index]));
  const officialIndexById = new Map(facts.officialIds.map((id, index) => [id, index]));
  const indexOf = (id: string | null) => (id === null ? NOBODY : (officialIndexById.get(id) ?? NOBODY));
  const holders = new Int32Array(2 * facts.gameCount).fill(NOBODY);
  for (const { game: id, chief, umpire } of assignments) {
    const game = gameIndexById.get(id);
    if (game === undefined) continue;
    holders[2 * game] = indexOf(chief);
    holders[2 * game + 1] = indexOf(umpire);
  }
  return holders;
}
