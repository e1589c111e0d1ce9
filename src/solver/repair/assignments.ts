import { type Assignment } from '../answer';
import { type CompiledSlate } from '../compile/compiled-slate';
import { NOBODY } from '../compile/facts';
import { type SlateProblem } from '../problem';
import { type Holders } from '../tours';

/** Every game once, in the order of the problem. */
export function writeAssignments(
  problem: SlateProblem,
  slate: CompiledSlate,
  holders: Holders,
): Assignment[] {
  const gameIndexById = new Map(slate.gameIds.map((id, index) => [id, index]));
  const idOf = (holder: number) => (holder === NOBODY ? null : slate.officialIds[holder]!);
  return problem.games.map(({ id }) => {
    const game = gameIndexById.get(id)!;
    return { game: id, chief: idOf(holders[2 * game]!), umpire: idOf(holders[2 * game + 1]!) };
  });
}
