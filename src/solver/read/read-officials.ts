import { type FieldReader, type JsonObject, type NumberRange } from './fields';
import { memberPath } from './faults';

const COUNT: NumberRange = { min: 0, whole: true };
const NUMBERS: Readonly<Record<string, NumberRange>> = {
  level: { whole: true },
  maxHomeMinutes: COUNT,
  maxGamesPerDay: COUNT,
  maxGames: COUNT,
  priorGames: { min: 0 },
  targetGames: { min: 0 },
};
const FLAGS = ['mayBeChief', 'minor'];
const SHAPE = {
  required: ['id', ...Object.keys(NUMBERS), ...FLAGS, 'home', 'available'],
  optional: ['reluctant', 'avoidTeams', 'avoidVenues', 'avoidOfficials', 'recentTeams', 'recentPartners'],
};

/** Judges the `officials` section; returns the ids found. */
export function readOfficials(value: unknown, placeIds: ReadonlySet<string>, read: FieldReader): Set<string> {
  const entries: { official: JsonObject; at: string }[] = [];
  const officialIds = read.idList(value, 'officials', (item, at) => {
    const official = read.object(item, at, SHAPE);
    if (official === undefined) return undefined;
    entries.push({ official, at });
    readOwnFields(official, at, placeIds, read);
    return official;
  });
  // Officials may name others who stand further down in the list, so these wait until all ids are known.
  for (const { official, at } of entries) readNamedOfficials(official, at, officialIds, read);
  return officialIds;
}

function readOwnFields(
  official: JsonObject,
  at: string,
  placeIds: ReadonlySet<string>,
  read: FieldReader,
): void {
  const present = (key: string) => Object.hasOwn(official, key);
  for (const [key, range] of Object.entries(NUMBERS)) {
    if (present(key)) read.number(official[key], `${at}.${key}`, range);
  }
  for (const key of FLAGS) if (present(key)) read.flag(official[key], `${at}.${key}`);
  if (present('home')) read.reference(official['home'], `${at}.home`, placeIds, 'place');
  for (const key of ['available', 'reluctant']) if (present(key)) read.windows(official[key], `${at}.${key}`);
  if (present('avoidTeams')) {
    const path = `${at}.avoidTeams`;
    read.array(official['avoidTeams'], path)?.forEach((team, i) => read.text(team, `${path}[${i}]`));
  }
  if (present('avoidVenues')) {
    const path = `${at}.avoidVenues`;
    read
      .array(official['avoidVenues'], path)
      ?.forEach((v, i) => read.reference(v, `${path}[${i}]`, placeIds, 'place'));
  }
  if (present('recentTeams')) readCounts(official['recentTeams'], `${at}.recentTeams`, read);
}

function readNamedOfficials(
  official: JsonObject,
  at: string,
  officialIds: ReadonlySet<string>,
  read: FieldReader,
): void {
  if (Object.hasOwn(official, 'avoidOfficials')) {
    const path = `${at}.avoidOfficials`;
    read
      .array(official['avoidOfficials'], path)
      ?.forEach((id, i) => read.reference(id, `${path}[${i}]`, officialIds, 'official'));
  }
  if (!Object.hasOwn(official, 'recentPartners')) return;
  const path = `${at}.recentPartners`;
  for (const id of readCounts(official['recentPartners'], path, read)) {
    read.reference(id, memberPath(path, id), officialIds, 'official');
  }
}

/** Judges an object of counts; returns its keys. */
function readCounts(value: unknown, path: string, read: FieldReader): readonly string[] {
  const counts = read.object(value, path, { required: [], anyKey: true });
  if (counts === undefined) return [];
  for (const [key, count] of Object.entries(counts)) read.number(count, memberPath(path, key), COUNT);
  return Object.keys(counts);
}
