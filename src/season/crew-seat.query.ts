import { IsNull, type EntityManager } from 'typeorm';
import { Assignment } from '../slates/assignment.entity';

/** The seat that an official holds in a game as published, or null when they hold none. */
export async function readCrewSeat(
  tx: EntityManager,
  of: { readonly associationId: string; readonly gameId: string; readonly officialId: string },
): Promise<Assignment | null> {
  const { associationId, gameId, officialId } = of;
  return tx.findOneBy(Assignment, { associationId, gameId, officialId, endedAt: IsNull() });
}
