import { SEAT_NAMES } from '../problem';
import { type FieldReader } from '../read/fields';

/** The ids that an event may name; they grow and shrink from event to event. */
export interface IdsSoFar {
  readonly places: Set<string>;
  readonly divisions: ReadonlySet<string>;
  readonly officials: ReadonlySet<string>;
  readonly games: Set<string>;
}

const SHAPE = {
  required: ['id', 'tipOff', 'durationMinutes', 'venue', 'division', 'home', 'away', 'priority'],
  optional: ['locked'],
};

/** Judges a game that joins the slate; returns its id when that is sound. */
export function readAddedGame(
  value: unknown,
  at: string,
  ids: IdsSoFar,
  read: FieldReader,
): string | undefined {
  const game = read.object(value, at, SHAPE);
  if (game === undefined) return undefined;
  const field = (key: string, judge: (v: unknown, path: string) => void) => {
    if (Object.hasOwn(game, key)) judge(game[key], `${at}.${key}`);
  };
  field('tipOff', (v, path) => read.instant(v, path));
  field('durationMinutes', (v, path) => read.number(v, path, { min: 1, whole: true }));
  field('venue', (v, path) => read.reference(v, path, ids.places, 'place'));
  field('division', (v, path) => read.reference(v, path, ids.divisions, 'division'));
  field('home', (v, path) => read.text(v, path));
  field('away', (v, path) => read.text(v, path));
  field('priority', (v, path) => read.number(v, path, { min: 0, above: true }));
  field('locked', (v, path) => {
    const seats = read.object(v, path, { required: [], optional: SEAT_NAMES });
    for (const seat of SEAT_NAMES) {
      if (seats === undefined || !Object.hasOwn(seats, seat) || seats[seat] === null) continue;
      read.reference(seats[seat], `${path}.${seat}`, ids.officials, 'official');
    }
  });
  return Object.hasOwn(game, 'id') ? read.text(game['id'], `${at}.id`) : undefined;
}
