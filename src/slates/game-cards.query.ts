import { In, type EntityManager } from 'typeorm';
import { Division } from '../games/division.entity';
import { Game } from '../games/game.entity';
import { Team } from '../games/team.entity';
import { Court } from '../places/court.entity';
import { Venue } from '../places/venue.entity';

/** A team as it stands beside a game. `colour` is that of the shirts it wears in this game. */
export interface CardTeam {
  readonly id: string;
  readonly code: string;
  readonly name: string;
  readonly colour: string;
}

/** One game with everything that names it: where, when and who plays. */
export interface GameCard {
  readonly id: string;
  readonly number: string;
  readonly status: Game['status'];
  /** `YYYY-MM-DD` in the venue's zone. */
  readonly localDate: string;
  /** `HH:MM` in the venue's zone. */
  readonly localTime: string;
  readonly timeZone: string;
  readonly startsAt: Date;
  readonly durationMinutes: number;
  readonly priority: number;
  readonly note: string;
  readonly updatedAt: Date;
  readonly division: { readonly id: string; readonly code: string; readonly name: string };
  readonly venue: {
    readonly id: string;
    readonly code: string;
    readonly name: string;
    readonly town: string;
  };
  readonly court: { readonly id: string; readonly name: string } | null;
  readonly home: CardTeam;
  readonly away: CardTeam;
}

/** Cards of the games with these ids, by game id; ids that the association does not have are left out. */
export async function readGameCards(
  tx: EntityManager,
  associationId: string,
  gameIds: readonly string[],
): Promise<Map<string, GameCard>> {
  if (gameIds.length === 0) return new Map();
  const games = await tx.findBy(Game, { associationId, id: In([...gameIds]) });
  const named = (ids: readonly string[]) => ({ associationId, id: In([...new Set(ids)]) });
  const divisions = await tx.findBy(Division, named(games.map((game) => game.divisionId)));
  const venues = await tx.findBy(Venue, named(games.map((game) => game.venueId)));
  const courtIds = games.flatMap((game) => (game.courtId === null ? [] : [game.courtId]));
  const courts = await tx.findBy(Court, named(courtIds));
  const teams = await tx.findBy(Team, named(games.flatMap((game) => [game.homeTeamId, game.awayTeamId])));
  const divisionById = byId(divisions);
  const venueById = byId(venues);
  const courtById = byId(courts);
  const teamById = byId(teams);
  return new Map(
    games.map((game) => {
      const court = game.courtId === null ? undefined : courtById.get(game.courtId);
      const venue = known(venueById, game.venueId);
      const division = known(divisionById, game.divisionId);
      const home = known(teamById, game.homeTeamId);
      const away = known(teamById, game.awayTeamId);
      const card: GameCard = {
        id: game.id,
        number: game.number,
        status: game.status,
        localDate: game.localDate,
        localTime: game.localTime.slice(0, 5),
        timeZone: game.timeZone,
        startsAt: game.startsAt,
        durationMinutes: game.durationMinutes,
        priority: game.priority,
        note: game.note,
        updatedAt: game.updatedAt,
        division: { id: division.id, code: division.code, name: division.name },
        venue: { id: venue.id, code: venue.code, name: venue.name, town: venue.town },
        court: court === undefined ? null : { id: court.id, name: court.name },
        home: { id: home.id, code: home.code, name: home.name, colour: home.homeColour },
        away: { id: away.id, code: away.code, name: away.name, colour: away.awayColour },
      };
      return [game.id, card];
    }),
  );
}

/** By tip-off, then venue, court and number, as a weekend is read. */
export function compareGameCards(left: GameCard, right: GameCard): number {
  return (
    left.startsAt.getTime() - right.startsAt.getTime() ||
    left.venue.name.localeCompare(right.venue.name) ||
    (left.court?.name ?? '').localeCompare(right.court?.name ?? '') ||
    left.number.localeCompare(right.number)
  );
}

function byId<Row extends { readonly id: string }>(rows: readonly Row[]): Map<string, Row> {
  return new Map(rows.map((row) => [row.id, row]));
}

/** Foreign keys make the row certain; its absence would be a bug. */
function known<Row>(rowById: ReadonlyMap<string, Row>, id: string): Row {
  const row = rowById.get(id);
  if (row === undefined) throw new Error(`Row ${id} is referred to and not there.`);
  return row;
}
