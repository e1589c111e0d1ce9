import { In, IsNull, MoreThanOrEqual, type EntityManager } from 'typeorm';
import { Assignment } from './assignment.entity';
import { readCrewOfficials, type CrewOfficial } from './crew-officials.query';
import { readGameCards, type GameCard } from './game-cards.query';

/** One assignment of an official, as they were told it, with the game as it stands now. */
export interface OfficialGame {
  /** The row as published; times in it are those that the official was shown. */
  readonly assignment: Assignment;
  /** The game as the association has it now; it may have moved since, which the next publication tells. */
  readonly game: GameCard;
  /** Who holds the other seat and has been told so; null while it is open. */
  readonly partner: CrewOfficial | null;
  readonly partnerReply: Assignment['reply'] | null;
}

export interface OfficialGamesOptions {
  /** Games that end (as told) at or after this instant; all of them unless stated. */
  readonly endingFrom?: Date;
  /** Ended assignments too: those of declined, replaced and cancelled seats. False unless stated. */
  readonly withEnded?: boolean;
}

/** An official's assignments by tip-off as told, live ones before ended ones at the same instant. */
export async function readOfficialGames(
  tx: EntityManager,
  associationId: string,
  officialId: string,
  options: OfficialGamesOptions = {},
): Promise<OfficialGame[]> {
  const assignments = await tx.findBy(Assignment, {
    associationId,
    officialId,
    ...(options.endingFrom === undefined ? {} : { endsAt: MoreThanOrEqual(options.endingFrom) }),
    ...(options.withEnded === true ? {} : { endedAt: IsNull() }),
  });
  const gameIds = [...new Set(assignments.map((assignment) => assignment.gameId))];
  const cards = await readGameCards(tx, associationId, gameIds);
  const crews = await tx.findBy(Assignment, { associationId, gameId: In(gameIds), endedAt: IsNull() });
  const partners = crews.filter((assignment) => assignment.officialId !== officialId);
  const officials = await readCrewOfficials(
    tx,
    associationId,
    partners.map((partner) => partner.officialId),
  );
  return assignments
    .sort(
      (left, right) =>
        left.startsAt.getTime() - right.startsAt.getTime() ||
        Number(left.endedAt !== null) - Number(right.endedAt !== null) ||
        left.createdAt.getTime() - right.createdAt.getTime() ||
        (left.id < right.id ? -1 : 1),
    )
    .flatMap((assignment) => {
      const game = cards.get(assignment.gameId);
      const partner = partners.find(
        (other) => other.gameId === assignment.gameId && other.seat !== assignment.seat,
      );
      if (game === undefined) return [];
      return [
        {
          assignment,
          game,
          partner: partner === undefined ? null : (officials.get(partner.officialId) ?? null),
          partnerReply: partner?.reply ?? null,
        },
      ];
    });
}
