import { groupedBy } from './grouped-by';
import { seatNames, type SeatName } from './seat-name';

/** A game as the association has it now. */
export interface PreviewGame {
  readonly id: string;
  readonly status: 'TENTATIVE' | 'CONFIRMED' | 'CANCELLED';
  readonly venueId: string;
  readonly startsAt: Date;
  readonly durationMinutes: number;
}

/** A seat of the working copy. */
export interface PreviewSeat {
  readonly gameId: string;
  readonly seat: SeatName;
  readonly officialId: string | null;
}

/** A live assignment: what an official has been told and still counts on. */
export interface PreviewAssignment {
  readonly id: string;
  readonly gameId: string;
  readonly seat: SeatName;
  readonly officialId: string;
  readonly venueId: string;
  readonly startsAt: Date;
  readonly endsAt: Date;
}

/** When and where a game is, as an official would be told it now. */
export interface ToldGame {
  readonly venueId: string;
  readonly startsAt: Date;
  readonly endsAt: Date;
  readonly dutyStartsAt: Date;
  readonly dutyEndsAt: Date;
}

/** Somebody who is asked for the first time. */
export interface AddedSeat {
  readonly gameId: string;
  readonly seat: SeatName;
  readonly officialId: string;
  readonly told: ToldGame;
}

/** Somebody who stays with a game of which something changed, and is asked again. */
export interface RevisedSeat {
  readonly assignmentId: string;
  readonly gameId: string;
  readonly seat: SeatName;
  readonly officialId: string;
  readonly told: ToldGame;
  readonly differences: readonly ('time' | 'venue' | 'seat')[];
}

/** Somebody who is told that they are no longer needed. */
export interface EndedSeat {
  readonly assignmentId: string;
  readonly gameId: string;
  readonly seat: SeatName;
  readonly officialId: string;
  readonly reason: 'replaced' | 'withdrawn' | 'game-cancelled';
}

/** What publishing now would tell whom. Who is in none of the three lists hears nothing. */
export interface PublicationPreview {
  readonly added: readonly AddedSeat[];
  readonly revised: readonly RevisedSeat[];
  readonly ended: readonly EndedSeat[];
  /** Live assignments that stand as they were told. */
  readonly unchanged: number;
}

/**
 * Compares the working copy with what officials have been told.
 *
 * A person who stays with a game keeps their assignment, and with it the calendar event, also when the two
 * seats are exchanged. Changed are time, venue and seat; a change of the association's lead or wrap-up
 * times alone asks nobody again.
 */
export function previewPublication(input: {
  readonly games: readonly PreviewGame[];
  readonly seats: readonly PreviewSeat[];
  readonly assignments: readonly PreviewAssignment[];
  readonly policy: { readonly arrivalLeadMinutes: number; readonly wrapUpMinutes: number };
}): PublicationPreview {
  const added: AddedSeat[] = [];
  const revised: RevisedSeat[] = [];
  const ended: EndedSeat[] = [];
  let unchanged = 0;
  const liveByGame = groupedBy(input.assignments, (assignment) => assignment.gameId);
  const seatsByGame = groupedBy(input.seats, (seat) => seat.gameId);
  for (const game of [...input.games].sort((left, right) => (left.id < right.id ? -1 : 1))) {
    const told = toldNow(game, input.policy);
    const live = liveByGame.get(game.id) ?? [];
    const meant = meantCrew(game, seatsByGame.get(game.id) ?? []);
    for (const assignment of live) {
      const { id: assignmentId, gameId, officialId } = assignment;
      const seat = seatNames.find((name) => meant.get(name) === officialId);
      if (seat === undefined) {
        const isTaken = meant.get(assignment.seat) !== undefined;
        const reason = game.status === 'CANCELLED' ? 'game-cancelled' : isTaken ? 'replaced' : 'withdrawn';
        ended.push({ assignmentId, gameId, seat: assignment.seat, officialId, reason });
        continue;
      }
      const differences = differencesOf(assignment, seat, told);
      if (differences.length === 0) unchanged += 1;
      else revised.push({ assignmentId, gameId, seat, officialId, told, differences });
    }
    for (const seat of seatNames) {
      const officialId = meant.get(seat);
      if (officialId === undefined || live.some((row) => row.officialId === officialId)) continue;
      added.push({ gameId: game.id, seat, officialId, told });
    }
  }
  return { added, revised, ended, unchanged };
}

/** Everybody who would hear of the publication, each once, in order of id. */
export function officialsConcerned(preview: PublicationPreview): string[] {
  const seats = [...preview.added, ...preview.revised, ...preview.ended];
  return [...new Set(seats.map((seat) => seat.officialId))].sort();
}

/** True when publishing would tell nobody anything. */
export function isNothingToPublish(preview: PublicationPreview): boolean {
  return preview.added.length + preview.revised.length + preview.ended.length === 0;
}

/** A duty runs from the arrival lead before tip-off to the wrap-up after the planned end. */
function toldNow(
  game: PreviewGame,
  policy: { readonly arrivalLeadMinutes: number; readonly wrapUpMinutes: number },
): ToldGame {
  const startsAt = game.startsAt.getTime();
  const endsAt = startsAt + game.durationMinutes * 60_000;
  return {
    venueId: game.venueId,
    startsAt: new Date(startsAt),
    endsAt: new Date(endsAt),
    dutyStartsAt: new Date(startsAt - policy.arrivalLeadMinutes * 60_000),
    dutyEndsAt: new Date(endsAt + policy.wrapUpMinutes * 60_000),
  };
}

function meantCrew(game: PreviewGame, seats: readonly PreviewSeat[]): Map<SeatName, string> {
  if (game.status === 'CANCELLED') return new Map();
  return new Map(
    seats.flatMap((row) => (row.officialId === null ? [] : [[row.seat, row.officialId] as const])),
  );
}

function differencesOf(
  assignment: PreviewAssignment,
  seat: SeatName,
  told: ToldGame,
): ('time' | 'venue' | 'seat')[] {
  const isSameTime =
    assignment.startsAt.getTime() === told.startsAt.getTime() &&
    assignment.endsAt.getTime() === told.endsAt.getTime();
  return [
    ...(isSameTime ? [] : (['time'] as const)),
    ...(assignment.venueId === told.venueId ? [] : (['venue'] as const)),
    ...(assignment.seat === seat ? [] : (['seat'] as const)),
  ];
}
