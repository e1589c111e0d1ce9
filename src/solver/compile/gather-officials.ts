import { type Official } from '../problem';
import { raggedRows, sharedFloat64, sharedInt32, sharedUint8, type RaggedRows } from './arrays';
import { type SlateFacts } from './facts';
import { compileWindows } from './windows';

interface OfficialIndexes {
  readonly officialIndexById: ReadonlyMap<string, number>;
  readonly venueIndexById: ReadonlyMap<string, number>;
  readonly teamIndexById: ReadonlyMap<string, number>;
}

type OfficialFacts = Pick<
  SlateFacts,
  | 'officialLevel'
  | 'officialMayBeChief'
  | 'officialMinor'
  | 'officialClass'
  | 'maxHomeMinutes'
  | 'maxGamesPerDay'
  | 'maxGames'
  | 'priorGames'
  | 'targetGames'
  | 'availableStart'
  | 'availableFromMs'
  | 'availableToMs'
  | 'reluctantStart'
  | 'reluctantFromMs'
  | 'reluctantToMs'
  | 'avoidTeams'
  | 'avoidVenues'
  | 'avoidOfficials'
  | 'recentTeams'
  | 'recentTeamCounts'
  | 'recentPartners'
  | 'recentPartnerCounts'
  | 'classCount'
  | 'classLevel'
  | 'classMinor'
>;

export function gatherOfficials(
  officials: readonly Official[],
  gameCount: number,
  indexes: OfficialIndexes,
): OfficialFacts {
  const available = compileWindows(officials.map((official) => official.available));
  const reluctant = compileWindows(officials.map((official) => official.reluctant ?? []));
  const recentTeams = countedRows(officials.map((o) => knownCounts(o.recentTeams, indexes.teamIndexById)));
  const recentPartners = countedRows(partnerCounts(officials, indexes.officialIndexById));
  const float = (read: (official: Official) => number) => fillFloat64(officials, read);
  return {
    officialLevel: float((official) => official.level),
    officialMayBeChief: fillFlags(officials, (official) => official.mayBeChief),
    officialMinor: fillFlags(officials, (official) => official.minor),
    maxHomeMinutes: float((official) => official.maxHomeMinutes),
    maxGamesPerDay: fillCounts(officials, (official) => Math.min(official.maxGamesPerDay, 2 * gameCount)),
    maxGames: fillCounts(officials, (official) => Math.min(official.maxGames, 2 * gameCount)),
    priorGames: float((official) => official.priorGames),
    targetGames: float((official) => official.targetGames),
    availableStart: available.start,
    availableFromMs: available.fromMs,
    availableToMs: available.toMs,
    reluctantStart: reluctant.start,
    reluctantFromMs: reluctant.fromMs,
    reluctantToMs: reluctant.toMs,
    avoidTeams: raggedRows(officials.map((o) => knownIndexes(o.avoidTeams, indexes.teamIndexById))),
    avoidVenues: raggedRows(officials.map((o) => knownIndexes(o.avoidVenues, indexes.venueIndexById))),
    avoidOfficials: raggedRows(mutualAvoidance(officials, indexes.officialIndexById)),
    recentTeams: recentTeams.rows,
    recentTeamCounts: recentTeams.counts,
    recentPartners: recentPartners.rows,
    recentPartnerCounts: recentPartners.counts,
    ...gatherClasses(officials),
  };
}

/** Distinct (level, minor), by level, adults first. */
function gatherClasses(
  officials: readonly Official[],
): Pick<SlateFacts, 'officialClass' | 'classCount' | 'classLevel' | 'classMinor'> {
  const keyOf = (official: Official) => `${official.level} ${official.minor ? 1 : 0}`;
  const byKey = new Map(officials.map((official) => [keyOf(official), official]));
  const classes = [...byKey.values()].sort((a, b) => a.level - b.level || Number(a.minor) - Number(b.minor));
  const indexByKey = new Map(classes.map((official, index) => [keyOf(official), index]));
  return {
    officialClass: fillCounts(officials, (official) => indexByKey.get(keyOf(official))!),
    classCount: classes.length,
    classLevel: fillFloat64(classes, (official) => official.level),
    classMinor: fillFlags(classes, (official) => official.minor),
  };
}

/** Each pair on both sides, with the larger of the two figures. */
function partnerCounts(
  officials: readonly Official[],
  indexById: ReadonlyMap<string, number>,
): Map<number, number>[] {
  const rows = officials.map(() => new Map<number, number>());
  const raise = (row: Map<number, number>, partner: number, count: number) => {
    if (count > (row.get(partner) ?? 0)) row.set(partner, count);
  };
  officials.forEach((official, o) => {
    for (const [partner, count] of knownCounts(official.recentPartners, indexById)) {
      raise(rows[o]!, partner, count);
      raise(rows[partner]!, o, count);
    }
  });
  return rows;
}

function mutualAvoidance(officials: readonly Official[], indexById: ReadonlyMap<string, number>): number[][] {
  const rows = officials.map(() => new Set<number>());
  officials.forEach((official, o) => {
    for (const avoided of knownIndexes(official.avoidOfficials, indexById)) {
      rows[o]!.add(avoided);
      rows[avoided]!.add(o);
    }
  });
  return rows.map((row) => [...row].sort((a, b) => a - b));
}

/** Ascending, each once; ids that no game of this slate concerns are left out. */
function knownIndexes(ids: readonly string[] | undefined, indexById: ReadonlyMap<string, number>): number[] {
  const found = (ids ?? []).map((id) => indexById.get(id)).filter((index) => index !== undefined);
  return [...new Set(found)].sort((a, b) => a - b);
}

function knownCounts(
  counts: Readonly<Record<string, number>> | undefined,
  indexById: ReadonlyMap<string, number>,
): Map<number, number> {
  const found = new Map<number, number>();
  for (const [id, count] of Object.entries(counts ?? {})) {
    const index = indexById.get(id);
    if (index !== undefined && count > 0) found.set(index, count);
  }
  return found;
}

function countedRows(rows: readonly ReadonlyMap<number, number>[]): {
  rows: RaggedRows;
  counts: Float64Array;
} {
  const sorted = rows.map((row) => [...row.entries()].sort((a, b) => a[0] - b[0]));
  const ragged = raggedRows(sorted.map((row) => row.map(([index]) => index)));
  const counts = sharedFloat64(ragged.values.length);
  sorted.forEach((row, r) => row.forEach(([, count], i) => (counts[ragged.start[r]! + i] = count)));
  return { rows: ragged, counts };
}

function fillFloat64(officials: readonly Official[], read: (official: Official) => number): Float64Array {
  const values = sharedFloat64(officials.length);
  officials.forEach((official, index) => (values[index] = read(official)));
  return values;
}

function fillCounts(officials: readonly Official[], read: (official: Official) => number): Int32Array {
  const values = sharedInt32(officials.length);
  officials.forEach((official, index) => (values[index] = read(official)));
  return values;
}

function fillFlags(officials: readonly Official[], read: (official: Official) => boolean): Uint8Array {
  const values = sharedUint8(officials.length);
  officials.forEach((official, index) => (values[index] = read(official) ? 1 : 0));
  return values;
}
