import type { Game as ProblemGame, LockedSeats, PublishedSeats } from '../solver';
import { groupedBy } from './grouped-by';
import type { MappingFault } from './mapping-fault';
import { seatNames, type SeatName } from './seat-name';
import type { RecordedGame, SlateRecords } from './slate-records';

/** A game that takes part, with the place where it is played. */
export interface PlayedGame extends RecordedGame {
  readonly placeId: string;
}

/** The slate's games that can be crewed, in order of id; cancelled ones are passed over, faulty ones reported. */
export function playedGames(
  records: Pick<SlateRecords, 'games' | 'venues' | 'slate'>,
  faults: MappingFault[],
): PlayedGame[] {
  const venueById = new Map(records.venues.map((venue) => [venue.id, venue]));
  const games = records.games
    .filter((game) => game.status !== 'CANCELLED')
    .sort((left, right) => (left.id < right.id ? -1 : 1));
  const played = games.flatMap((game) => {
    const venue = venueById.get(game.venueId);
    if (venue === undefined || venue.placeId === null) {
      faults.push({
        severity: 'left-out',
        code: 'game-without-position',
        message: `Game ${game.number} takes no part: ${venue?.name ?? 'its venue'} has no position. Enter where the venue is.`,
        link: venue === undefined ? { kind: 'game', id: game.id } : { kind: 'venue', id: venue.id },
      });
      return [];
    }
    if (game.courtId === null) {
      faults.push({
        severity: 'note',
        code: 'game-without-court',
        message: `Game ${game.number} at ${venue.name} has no court yet; the crew will not know which hall to go to.`,
        link: { kind: 'game', id: game.id },
      });
    }
    return [{ ...game, placeId: venue.placeId }];
  });
  if (played.length === 0) {
    faults.push({
      severity: 'stops',
      code: 'no-games',
      message: `${records.slate.name} has no game that could be crewed. Bring games in, or refresh the slate.`,
      link: { kind: 'slate', id: records.slate.id },
    });
  }
  return played;
}

/** The games section, with locked and published seats as far as they name officials who take part. */
export function mapGames(
  games: readonly PlayedGame[],
  records: Pick<SlateRecords, 'seats' | 'assignments' | 'officials'>,
  takingPart: ReadonlySet<string>,
  faults: MappingFault[],
): ProblemGame[] {
  const seatsByGame = groupedBy(records.seats, (seat) => seat.gameId);
  const assignmentsByGame = groupedBy(records.assignments, (assignment) => assignment.gameId);
  const officialById = new Map(records.officials.map((official) => [official.id, official]));
  return games.map((game) => {
    const locked: Partial<Record<SeatName, string | null>> = {};
    const published: Partial<Record<SeatName, string>> = {};
    for (const seat of seatNames) {
      const row = seatsByGame.get(game.id)?.find((candidate) => candidate.seat === seat);
      if (row?.locked === true) {
        if (row.officialId === null || takingPart.has(row.officialId)) locked[seat] = row.officialId;
        else faults.push(lockFault(game, seat, officialById.get(row.officialId)));
      }
      const told = assignmentsByGame.get(game.id)?.find((candidate) => candidate.seat === seat);
      if (told !== undefined && takingPart.has(told.officialId)) published[seat] = told.officialId;
    }
    return {
      id: game.id,
      tipOff: game.startsAt.toISOString(),
      durationMinutes: game.durationMinutes,
      venue: game.placeId,
      division: game.divisionId,
      home: game.homeTeamId,
      away: game.awayTeamId,
      priority: game.priority,
      ...(Object.keys(locked).length > 0 && { locked: locked satisfies LockedSeats }),
      ...(Object.keys(published).length > 0 && { published: published satisfies PublishedSeats }),
    };
  });
}

function lockFault(
  game: RecordedGame,
  seat: SeatName,
  official: { readonly givenName: string; readonly familyName: string } | undefined,
): MappingFault {
  const name = official === undefined ? 'an official' : `${official.givenName} ${official.familyName}`;
  return {
    severity: 'stops',
    code: 'locked-official-left-out',
    message: `The ${seat} seat of game ${game.number} is locked to ${name}, who takes no part in this slate. Unlock the seat.`,
    link: { kind: 'game', id: game.id },
  };
}
