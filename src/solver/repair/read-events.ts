import { type SlateProblem } from '../problem';
import { FaultList, type Fault } from '../read/faults';
import { FieldReader, type JsonObject } from '../read/fields';
import { readAddedGame, type IdsSoFar } from './read-added-game';
import { CHANGEABLE_LIMITS, type SlateEvent, type SlateEvents } from './events';

export type ReadEventsResult =
  | { readonly ok: true; readonly events: readonly SlateEvent[] }
  /** At least one fault, in the order of the file. */
  | { readonly ok: false; readonly faults: readonly Fault[] };

interface EventReader {
  readonly required: readonly string[];
  readonly optional?: readonly string[];
  read(event: JsonObject, at: string, ids: IdsSoFar, read: FieldReader, list: FaultList): void;
}

const COUNT = { min: 0, whole: true };

const READERS: Readonly<Record<SlateEvent['kind'], EventReader>> = {
  officialOut: {
    required: ['official'],
    optional: ['from', 'to'],
    read(event, at, ids, read, list) {
      read.reference(event['official'], `${at}.official`, ids.officials, 'official');
      const instant = (key: string) =>
        Object.hasOwn(event, key) ? read.instant(event[key], `${at}.${key}`) : undefined;
      const [from, to] = [instant('from'), instant('to')];
      if (from !== undefined && to !== undefined && from >= to) {
        const shown = `${String(event['from'])} to ${String(event['to'])}`;
        list.add(at, shown, 'must end after it begins', 'Exchange or correct "from" and "to".');
      }
    },
  },
  gameMoved: {
    required: ['game', 'tipOff'],
    optional: ['durationMinutes'],
    read(event, at, ids, read) {
      read.reference(event['game'], `${at}.game`, ids.games, 'game');
      read.instant(event['tipOff'], `${at}.tipOff`);
      if (Object.hasOwn(event, 'durationMinutes'))
        read.number(event['durationMinutes'], `${at}.durationMinutes`, { min: 1, whole: true });
    },
  },
  venueChanged: {
    required: ['game', 'venue'],
    read(event, at, ids, read) {
      read.reference(event['game'], `${at}.game`, ids.games, 'game');
      read.reference(event['venue'], `${at}.venue`, ids.places, 'place');
    },
  },
  gameAdded: {
    required: ['game'],
    read(event, at, ids, read, list) {
      const id = readAddedGame(event['game'], `${at}.game`, ids, read);
      if (id === undefined) return;
      if (ids.games.has(id))
        list.add(`${at}.game.id`, id, 'is already the id of a game', 'Give each its own id.');
      ids.games.add(id);
    },
  },
  gameCancelled: {
    required: ['game'],
    read(event, at, ids, read) {
      read.reference(event['game'], `${at}.game`, ids.games, 'game');
      if (typeof event['game'] === 'string') ids.games.delete(event['game']);
    },
  },
  limitsChanged: {
    required: ['official', 'limits'],
    read(event, at, ids, read) {
      read.reference(event['official'], `${at}.official`, ids.officials, 'official');
      readLimits(event['limits'], `${at}.limits`, ids, read);
    },
  },
  placeAdded: {
    required: ['place'],
    read(event, at, ids, read, list) {
      const path = `${at}.place`;
      const place = read.object(event['place'], path, { required: ['id', 'lat', 'lon'] });
      if (place === undefined) return;
      read.number(place['lat'], `${path}.lat`, { min: -90, max: 90 });
      read.number(place['lon'], `${path}.lon`, { min: -180, max: 180 });
      const id = read.text(place['id'], `${path}.id`);
      if (id === undefined) return;
      if (ids.places.has(id))
        list.add(`${path}.id`, id, 'is already the id of a place', 'Give each its own id.');
      ids.places.add(id);
    },
  },
};

/** Judges a parsed JSON document as `slate-events/1` about this problem and reports all its faults at once. */
export function readEvents(document: unknown, problem: SlateProblem): ReadEventsResult {
  const list = new FaultList();
  const read = new FieldReader(list);
  const root = read.object(document, '', { required: ['format', 'events'] });
  if (root === undefined) return { ok: false, faults: list.faults };
  if (root['format'] !== 'slate-events/1')
    list.add('format', root['format'], 'must be "slate-events/1"', 'Set "format" to "slate-events/1".');
  const idsOf = (items: readonly { readonly id: string }[]) => new Set(items.map(({ id }) => id));
  const ids: IdsSoFar = {
    places: idsOf(problem.places),
    divisions: idsOf(problem.divisions),
    officials: idsOf(problem.officials),
    games: idsOf(problem.games),
  };
  if (Object.hasOwn(root, 'events')) {
    read
      .array(root['events'], 'events')
      ?.forEach((event, index) => readEvent(event, `events[${index}]`, ids, read, list));
  }
  if (list.faults.length > 0) return { ok: false, faults: list.faults };
  // Every field has been judged above, so that the document is what its type says.
  return { ok: true, events: (document as SlateEvents).events };
}

function readEvent(value: unknown, at: string, ids: IdsSoFar, read: FieldReader, list: FaultList): void {
  const anything = read.object(value, at, { required: ['kind'], anyKey: true });
  if (anything === undefined || !Object.hasOwn(anything, 'kind')) return;
  const kind = anything['kind'];
  if (typeof kind !== 'string' || !Object.hasOwn(READERS, kind)) {
    const known = Object.keys(READERS).join(', ');
    list.add(`${at}.kind`, kind, `must be one of ${known}`, 'Correct the kind of event.');
    return;
  }
  const reader = READERS[kind as SlateEvent['kind']];
  const event = read.object(value, at, {
    required: ['kind', ...reader.required],
    optional: reader.optional ?? [],
  });
  if (event === undefined || reader.required.some((key) => !Object.hasOwn(event, key))) return;
  reader.read(event, at, ids, read, list);
}

function readLimits(value: unknown, at: string, ids: IdsSoFar, read: FieldReader): void {
  const limits = read.object(value, at, { required: [], optional: CHANGEABLE_LIMITS });
  if (limits === undefined) return;
  const field = (key: (typeof CHANGEABLE_LIMITS)[number], judge: (v: unknown, path: string) => void) => {
    if (Object.hasOwn(limits, key)) judge(limits[key], `${at}.${key}`);
  };
  for (const key of ['maxHomeMinutes', 'maxGamesPerDay', 'maxGames'] as const)
    field(key, (v, path) => read.number(v, path, COUNT));
  for (const key of ['available', 'reluctant'] as const) field(key, (v, path) => read.windows(v, path));
  const each = (judge: (item: unknown, path: string) => void) => (v: unknown, path: string) =>
    read.array(v, path)?.forEach((item, i) => judge(item, `${path}[${i}]`));
  field(
    'avoidTeams',
    each((v, path) => read.text(v, path)),
  );
  field(
    'avoidVenues',
    each((v, path) => read.reference(v, path, ids.places, 'place')),
  );
  field(
    'avoidOfficials',
    each((v, path) => read.reference(v, path, ids.officials, 'official')),
  );
}
