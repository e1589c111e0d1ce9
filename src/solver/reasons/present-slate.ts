import { type Assignment } from '../answer';
import { compileSlate, type CompiledSlate } from '../compile';
import { NOBODY } from '../compile/facts';
import { type SeatName, type SlateProblem } from '../problem';
import { type Holders } from '../tours';

/** A slate to be explained, legal or not, with the problem that it is an answer to. */
export interface PresentSlate {
  readonly problem: SlateProblem;
  readonly slate: CompiledSlate;
  readonly holders: Holders;
}

/** Where a seat stands, by the problem's ids. */
export interface SeatPlace {
  readonly game: string;
  readonly seat: SeatName;
}

/** `assignments` may leave games out (their seats are open); every id must be one of the problem's. */
export function presentSlate(problem: SlateProblem, assignments: readonly Assignment[]): PresentSlate {
  const slate = compileSlate(problem);
  return { problem, slate, holders: holdersOf(slate, assignments) };
}

/** The officials of each seat, as indexes into the compiled slate; unknown games are passed over. */
export function holdersOf(slate: CompiledSlate, assignments: readonly Assignment[]): Holders {
  const gameById = new Map(slate.gameIds.map((id, game) => [id, game]));
  const officialById = new Map(slate.officialIds.map((id, official) => [id, official]));
  const holders = new Int32Array(2 * slate.gameCount).fill(NOBODY);
  for (const { game: id, chief, umpire } of assignments) {
    const game = gameById.get(id);
    if (game === undefined) continue;
    holders[2 * game] = chief === null ? NOBODY : (officialById.get(chief) ?? NOBODY);
    holders[2 * game + 1] = umpire === null ? NOBODY : (officialById.get(umpire) ?? NOBODY);
  }
  return holders;
}

/** The seat's index; null when there is no such game. */
export function seatIndex(slate: CompiledSlate, { game, seat }: SeatPlace): number | null {
  const index = slate.gameIds.indexOf(game);
  return index < 0 ? null : 2 * index + (seat === 'chief' ? 0 : 1);
}

export function placeOfSeat(slate: CompiledSlate, seat: number): SeatPlace {
  return { game: slate.gameIds[seat >> 1]!, seat: (seat & 1) === 0 ? 'chief' : 'umpire' };
}

/** The official's id, or null for an open seat. */
export function idOfHolder(slate: CompiledSlate, holder: number): string | null {
  return holder === NOBODY ? null : slate.officialIds[holder]!;
}

/** The same slate in the numbering of another compilation of the same games and officials. */
export function renumber(from: CompiledSlate, holders: Holders, to: CompiledSlate): Holders {
  return holdersOf(to, assignmentsOf(from, holders));
}

export function assignmentsOf(slate: CompiledSlate, holders: Holders): readonly Assignment[] {
  return slate.gameIds.map((game, index) => ({
    game,
    chief: idOfHolder(slate, holders[2 * index]!),
    umpire: idOfHolder(slate, holders[2 * index + 1]!),
  }));
}
