import { IsNull, type EntityManager } from 'typeorm';
import { Assignment } from './assignment.entity';
import { readCrewOfficials, type CrewOfficial } from './crew-officials.query';
import { readGameCards, type GameCard } from './game-cards.query';
import { SlateGame } from './slate-game.entity';

/** A seat's official as published. */
export interface GameCrewMember {
  readonly official: CrewOfficial;
  readonly assignment: Assignment;
}

/** A game and its published crew: what a briefing, a report and a ledger rest upon. */
export interface GameCrew {
  readonly game: GameCard;
  readonly slateId: string | null;
  readonly chief: GameCrewMember | null;
  readonly umpire: GameCrewMember | null;
}

/** The published crew of a game, or null where the association has no such game. */
export async function readGameCrew(
  tx: EntityManager,
  associationId: string,
  gameId: string,
): Promise<GameCrew | null> {
  const game = (await readGameCards(tx, associationId, [gameId])).get(gameId);
  if (game === undefined) return null;
  const link = await tx.findOneBy(SlateGame, { associationId, gameId });
  const live = await tx.findBy(Assignment, { associationId, gameId, endedAt: IsNull() });
  const officials = await readCrewOfficials(
    tx,
    associationId,
    live.map((assignment) => assignment.officialId),
  );
  const member = (seat: Assignment['seat']): GameCrewMember | null => {
    const assignment = live.find((row) => row.seat === seat);
    const official = assignment === undefined ? undefined : officials.get(assignment.officialId);
    return assignment === undefined || official === undefined ? null : { official, assignment };
  };
  return { game, slateId: link?.slateId ?? null, chief: member('chief'), umpire: member('umpire') };
}
