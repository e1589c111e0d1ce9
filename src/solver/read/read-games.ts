import { type FieldReader, type JsonObject } from './fields';
import { SEAT_NAMES } from '../problem';

const SHAPE = {
  required: ['id', 'tipOff', 'durationMinutes', 'venue', 'division', 'home', 'away', 'priority'],
  optional: ['locked', 'published'],
};

/** The ids that games may name. */
export interface KnownIds {
  readonly placeIds: ReadonlySet<string>;
  readonly divisionIds: ReadonlySet<string>;
  readonly officialIds: ReadonlySet<string>;
}

/** Judges the `games` section. */
export function readGames(value: unknown, known: KnownIds, read: FieldReader): void {
  read.idList(value, 'games', (item, at) => {
    const game = read.object(item, at, SHAPE);
    if (game !== undefined) readGame(game, at, known, read);
    return game;
  });
}

function readGame(game: JsonObject, at: string, known: KnownIds, read: FieldReader): void {
  const field = (key: string, judge: (value: unknown, path: string) => unknown) => {
    if (Object.hasOwn(game, key)) judge(game[key], `${at}.${key}`);
  };
  field('tipOff', (v, path) => read.instant(v, path));
  field('durationMinutes', (v, path) => read.number(v, path, { min: 1, whole: true }));
  field('venue', (v, path) => read.reference(v, path, known.placeIds, 'place'));
  field('division', (v, path) => read.reference(v, path, known.divisionIds, 'division'));
  field('home', (v, path) => read.text(v, path));
  field('away', (v, path) => read.text(v, path));
  field('priority', (v, path) => read.number(v, path, { min: 0, above: true }));
  field('locked', (v, path) => readSeats(v, path, known, read, true));
  field('published', (v, path) => readSeats(v, path, known, read, false));
}

function readSeats(
  value: unknown,
  path: string,
  known: KnownIds,
  read: FieldReader,
  mayBeNull: boolean,
): void {
  const seats = read.object(value, path, { required: [], optional: SEAT_NAMES });
  if (seats === undefined) return;
  for (const seat of SEAT_NAMES) {
    if (!Object.hasOwn(seats, seat) || (mayBeNull && seats[seat] === null)) continue;
    read.reference(seats[seat], `${path}.${seat}`, known.officialIds, 'official');
  }
}
