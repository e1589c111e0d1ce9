import { In, IsNull, type EntityManager } from 'typeorm';
import { Assignment } from './assignment.entity';
import { readCrewOfficials, type CrewOfficial } from './crew-officials.query';
import { compareGameCards, readGameCards, type GameCard } from './game-cards.query';
import type { SeatName } from './seat-name';
import { Seat } from './seat.entity';
import { SlateGame } from './slate-game.entity';
import { Slate } from './slate.entity';

/** What an official has been told about a seat. */
export interface ToldSeat {
  readonly assignmentId: string;
  readonly official: CrewOfficial;
  readonly sequence: number;
  readonly reply: Assignment['reply'];
  readonly repliedAt: Date | null;
}

/** One seat: who is meant to sit there, and who has been told so; the two differ until the next publication. */
export interface CrewSeat {
  readonly seat: SeatName;
  readonly official: CrewOfficial | null;
  readonly locked: boolean;
  readonly told: ToldSeat | null;
  /** Whoever was asked for this seat of this game and declined, latest first. */
  readonly declinedBy: readonly CrewOfficial[];
}

export interface CrewGame {
  readonly game: GameCard;
  readonly chief: CrewSeat;
  readonly umpire: CrewSeat;
}

export interface SlateCrews {
  readonly slate: Pick<Slate, 'id' | 'name' | 'fromDate' | 'toDate' | 'version' | 'chosenProposalId'>;
  /** By tip-off, venue, court and number; cancelled games are among them. */
  readonly games: readonly CrewGame[];
}

/** Every game of a slate with both its seats, or null where the association has no such slate. */
export async function readSlateCrews(
  tx: EntityManager,
  associationId: string,
  slateId: string,
): Promise<SlateCrews | null> {
  const slate = await tx.findOneBy(Slate, { associationId, id: slateId });
  if (slate === null) return null;
  const links = await tx.findBy(SlateGame, { associationId, slateId });
  const gameIds = links.map((link) => link.gameId);
  const cards = await readGameCards(tx, associationId, gameIds);
  const seats = await tx.findBy(Seat, { associationId, gameId: In(gameIds) });
  const live = await tx.findBy(Assignment, { associationId, gameId: In(gameIds), endedAt: IsNull() });
  const declined = await tx.findBy(Assignment, { associationId, gameId: In(gameIds), endReason: 'declined' });
  const officials = await readCrewOfficials(tx, associationId, [
    ...seats.flatMap((seat) => (seat.officialId === null ? [] : [seat.officialId])),
    ...[...live, ...declined].map((assignment) => assignment.officialId),
  ]);
  const rows = { seats: bySeat(seats), live: bySeat(live), declined, officials };
  const games = [...cards.values()].sort(compareGameCards).map((game) => ({
    game,
    chief: crewSeat(game.id, 'chief', rows),
    umpire: crewSeat(game.id, 'umpire', rows),
  }));
  const { id, name, fromDate, toDate, version, chosenProposalId } = slate;
  return { slate: { id, name, fromDate, toDate, version, chosenProposalId }, games };
}

interface SeatRows {
  readonly seats: ReadonlyMap<string, Seat>;
  readonly live: ReadonlyMap<string, Assignment>;
  readonly declined: readonly Assignment[];
  readonly officials: ReadonlyMap<string, CrewOfficial>;
}

function crewSeat(gameId: string, seat: SeatName, rows: SeatRows): CrewSeat {
  const row = rows.seats.get(seatKey({ gameId, seat }));
  const told = rows.live.get(seatKey({ gameId, seat }));
  const toldOfficial = told === undefined ? undefined : rows.officials.get(told.officialId);
  const official = row?.officialId === undefined || row.officialId === null ? null : row.officialId;
  return {
    seat,
    official: official === null ? null : (rows.officials.get(official) ?? null),
    locked: row?.locked ?? false,
    told:
      told === undefined || toldOfficial === undefined
        ? null
        : {
            assignmentId: told.id,
            official: toldOfficial,
            sequence: told.sequence,
            reply: told.reply,
            repliedAt: told.repliedAt,
          },
    declinedBy: rows.declined
      .filter((assignment) => assignment.gameId === gameId && assignment.seat === seat)
      .sort((left, right) => (right.endedAt?.getTime() ?? 0) - (left.endedAt?.getTime() ?? 0))
      .flatMap((assignment) => rows.officials.get(assignment.officialId) ?? []),
  };
}

function bySeat<Row extends { readonly gameId: string; readonly seat: SeatName }>(rows: readonly Row[]) {
  return new Map(rows.map((row) => [seatKey(row), row]));
}

function seatKey({ gameId, seat }: { readonly gameId: string; readonly seat: SeatName }): string {
  return `${gameId} ${seat}`;
}
