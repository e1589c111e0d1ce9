import { In, IsNull, QueryFailedError, type EntityManager } from 'typeorm';
import { Game } from '../games/game.entity';
import { Official } from '../roster/official.entity';
import { Assignment } from './assignment.entity';

/** What the database's constraints object to, and about whom. */
export interface ConstraintObjection {
  readonly constraint: string;
  /** Values of the key that collided, by column. */
  readonly key: Readonly<Record<string, string>>;
}

const guards: Readonly<Record<string, string>> = {
  assignment_one_game_at_once: 'would work two games at once',
  assignment_one_venue_at_once: 'would be due in two buildings at once',
  assignment_one_a_game: 'would hold both seats of one game',
  assignment_one_a_seat: 'would share a seat that somebody else has been told of',
};

/** Reads an error of the guards on assignments and seats; null for any other error. */
export function constraintObjection(error: unknown): ConstraintObjection | null {
  if (!(error instanceof QueryFailedError)) return null;
  const { code, constraint, detail } = error.driverError as {
    code?: string;
    constraint?: string;
    detail?: string;
  };
  if (code !== '23P01' && code !== '23505') return null;
  if (constraint === undefined || guards[constraint] === undefined) return null;
  // Such as: Key (association_id, official_id, …)=(…, …, …) conflicts with existing key …
  const match = /^Key \((.*?)\)=\((.*?)\)(?: |$)/.exec(detail ?? '');
  const columns = (match?.[1] ?? '').split(', ');
  const values = (match?.[2] ?? '').split(', ');
  return {
    constraint,
    key: Object.fromEntries(columns.map((column, index) => [column, values[index] ?? ''])),
  };
}

/** The objection in words, with the person and the games that they already have around it. */
export async function explainObjection(
  tx: EntityManager,
  associationId: string,
  objection: ConstraintObjection,
): Promise<string> {
  const officialId = objection.key['official_id'];
  const official =
    officialId === undefined ? null : await tx.findOneBy(Official, { associationId, id: officialId });
  const name = official === null ? 'Somebody' : `${official.givenName} ${official.familyName}`;
  const live =
    official === null
      ? []
      : await tx.findBy(Assignment, { associationId, officialId: official.id, endedAt: IsNull() });
  const games = await tx.findBy(Game, { associationId, id: In(live.map((row) => row.gameId)) });
  const numbers = games.map((game) => game.number).sort();
  const held = numbers.length === 0 ? '' : ` Has been told of ${numbers.join(', ')}.`;
  return `${name} ${guards[objection.constraint] ?? 'cannot be assigned so'}.${held}`;
}
