import { FaultList, type Fault } from './read/faults';
import { FieldReader, type JsonObject } from './read/fields';
import { readOfficials } from './read/read-officials';
import { readGames } from './read/read-games';
import { type SlateProblem } from './problem';

export type ReadProblemResult =
  | { readonly ok: true; readonly problem: SlateProblem }
  /** At least one fault, in the order of the file's sections. */
  | { readonly ok: false; readonly faults: readonly Fault[] };

const POLICY_MINUTES = ['arrivalLeadMinutes', 'wrapUpMinutes', 'sameVenueGapMinutes', 'minRestMinutes'];
const WEIGHTS = [
  'openSeat',
  'travelPerKm',
  'balance',
  'teamRepeat',
  'partnerRepeat',
  'overLevel',
  'reluctant',
  'change',
];
const DIVISION_LEVELS = ['chiefMinLevel', 'umpireMinLevel', 'chiefTargetLevel', 'umpireTargetLevel'];
const SECTIONS = [
  'format',
  'name',
  'timeZone',
  'policy',
  'travel',
  'places',
  'divisions',
  'officials',
  'games',
];

/**
 * Judges a parsed JSON document as `slate-problem/1` and reports all its faults at once.
 * Locks are judged later, on the compiled slate: a lock that breaks a rule is no fault of the format.
 */
export function readProblem(document: unknown): ReadProblemResult {
  const list = new FaultList();
  const read = new FieldReader(list);
  const root = read.object(document, '', { required: SECTIONS, optional: ['meta'] });
  if (root === undefined) return { ok: false, faults: list.faults };
  const section = (key: string, judge: (value: unknown) => void) => {
    if (Object.hasOwn(root, key)) judge(root[key]);
  };
  section('format', (value) => {
    if (value !== 'slate-problem/1') {
      list.add('format', value, 'must be "slate-problem/1"', 'Set "format" to "slate-problem/1".');
    }
  });
  section('name', (value) => read.text(value, 'name', { mayBeEmpty: true }));
  section('timeZone', (value) => readZone(value, read, list));
  section('policy', (value) => readPolicy(value, read));
  const placeIds = Object.hasOwn(root, 'places') ? readPlaces(root['places'], read) : new Set<string>();
  section('travel', (value) => readTravel(value, placeIds, read, list));
  const divisionIds = Object.hasOwn(root, 'divisions')
    ? readDivisions(root['divisions'], read, list)
    : new Set<string>();
  const officialIds = Object.hasOwn(root, 'officials')
    ? readOfficials(root['officials'], placeIds, read)
    : new Set<string>();
  section('games', (value) => readGames(value, { placeIds, divisionIds, officialIds }, read));
  if (list.faults.length > 0) return { ok: false, faults: list.faults };
  // Every field has been judged above, so that the document is what its type says.
  return { ok: true, problem: document as SlateProblem };
}

function readZone(value: unknown, read: FieldReader, list: FaultList): void {
  const zone = read.text(value, 'timeZone');
  if (zone === undefined) return;
  try {
    new Intl.DateTimeFormat('en-CA', { timeZone: zone });
  } catch {
    list.add('timeZone', zone, 'must be a known IANA time zone', 'Write a name like Europe/Vienna.');
  }
}

function readPolicy(value: unknown, read: FieldReader): void {
  const policy = read.object(value, 'policy', { required: [...POLICY_MINUTES, 'weights'] });
  if (policy === undefined) return;
  numbers(policy, 'policy', POLICY_MINUTES, (v, at) => read.number(v, at, { min: 0, whole: true }));
  if (!Object.hasOwn(policy, 'weights')) return;
  const weights = read.object(policy['weights'], 'policy.weights', { required: WEIGHTS });
  if (weights !== undefined)
    numbers(weights, 'policy.weights', WEIGHTS, (v, at) => read.number(v, at, { min: 0 }));
}

function readPlaces(value: unknown, read: FieldReader): Set<string> {
  return read.idList(value, 'places', (item, at) => {
    const place = read.object(item, at, { required: ['id', 'lat', 'lon'] });
    if (place === undefined) return undefined;
    numbers(place, at, ['lat'], (v, path) => read.number(v, path, { min: -90, max: 90 }));
    numbers(place, at, ['lon'], (v, path) => read.number(v, path, { min: -180, max: 180 }));
    return place;
  });
}

function readTravel(value: unknown, placeIds: ReadonlySet<string>, read: FieldReader, list: FaultList): void {
  const shape = { required: ['circuity', 'speedKmh', 'fixedMinutes'], optional: ['legs'] };
  const travel = read.object(value, 'travel', shape);
  if (travel === undefined) return;
  numbers(travel, 'travel', ['circuity'], (v, at) => read.number(v, at, { min: 1 }));
  numbers(travel, 'travel', ['speedKmh'], (v, at) => read.number(v, at, { min: 0, above: true }));
  numbers(travel, 'travel', ['fixedMinutes'], (v, at) => read.number(v, at, { min: 0, whole: true }));
  if (!Object.hasOwn(travel, 'legs')) return;
  const indexByWay = new Map<string, number>();
  read.array(travel['legs'], 'travel.legs')?.forEach((item, index) => {
    const at = `travel.legs[${index}]`;
    const leg = read.object(item, at, { required: ['from', 'to', 'minutes', 'metres'] });
    if (leg === undefined) return;
    for (const end of ['from', 'to']) {
      if (Object.hasOwn(leg, end)) read.reference(leg[end], `${at}.${end}`, placeIds, 'place');
    }
    numbers(leg, at, ['minutes', 'metres'], (v, path) => read.number(v, path, { min: 0, whole: true }));
    const way = JSON.stringify([leg['from'], leg['to']]);
    const first = indexByWay.get(way);
    if (first === undefined) indexByWay.set(way, index);
    else list.add(at, way, `is the way of travel.legs[${first}] again`, 'Keep one of the two legs.');
  });
}

function readDivisions(value: unknown, read: FieldReader, list: FaultList): Set<string> {
  return read.idList(value, 'divisions', (item, at) => {
    const division = read.object(item, at, { required: ['id', ...DIVISION_LEVELS, 'pairingCost'] });
    if (division === undefined) return undefined;
    numbers(division, at, DIVISION_LEVELS, (v, path) => read.number(v, path, { whole: true }));
    if (!Object.hasOwn(division, 'pairingCost')) return division;
    const table = read.array(division['pairingCost'], `${at}.pairingCost`);
    table?.forEach((cost, gap) => read.number(cost, `${at}.pairingCost[${gap}]`, { min: 0 }));
    if (table?.length === 0) {
      list.add(
        `${at}.pairingCost`,
        table,
        'must not be empty',
        'Give the cost for a level gap of 0 at least.',
      );
    }
    return division;
  });
}

/** Judges those of `keys` that are present; absent ones have been reported with the object's shape. */
function numbers(
  object: JsonObject,
  path: string,
  keys: readonly string[],
  judge: (v: unknown, at: string) => unknown,
) {
  for (const key of keys) if (Object.hasOwn(object, key)) judge(object[key], `${path}.${key}`);
}
