import { addDays } from '../platform/calendar-day';
import { measuredLegs, travelBetween } from '../places/travel-estimate';
import type { SlateProblem } from '../solver';
import type { TravelMinutes } from './busy-elsewhere';
import { mapGames, playedGames } from './map-games';
import { freeOfficials } from './free-officials';
import { mapOfficials } from './map-officials';
import type { MappingFault } from './mapping-fault';
import { seasonHistory } from './season-history';
import { seasonStart } from './season-start';
import type { SlateRecords } from './slate-records';

/** A slate as the solver sees it, and what the association's records lack. */
export interface MappedSlate {
  readonly problem: SlateProblem;
  readonly faults: readonly MappingFault[];
}

/** Readable names for the ids of a problem, kept under its `meta`. */
export interface ProblemNames {
  readonly officials: Readonly<Record<string, string>>;
  readonly games: Readonly<Record<string, string>>;
}

/**
 * Maps an association's records to `slate-problem/1`. Ids are those of the database, lists are in order of id,
 * so that the same records always make the same file, byte for byte. A venue and a home are known by their
 * place: two venues at one place count as one building.
 */
export function mapSlateProblem(records: SlateRecords): MappedSlate {
  const faults: MappingFault[] = [];
  const games = playedGames(records, faults);
  const officials = freeOfficials(records, games, travelMinutesOf(records), faults);
  const { policy, weights, travelModel, timeZone, slate } = records;
  const history = seasonHistory(records.past, {
    seasonFrom: seasonStart(slate.fromDate),
    recentFrom: addDays(slate.fromDate, -policy.recentDays),
    before: slate.fromDate,
  });
  const takingPart = new Set(officials.map((official) => official.id));
  const placeIds = new Set([
    ...games.map((game) => game.placeId),
    ...officials.map((official) => official.homePlaceId),
  ]);
  const divisionIds = new Set(games.map((game) => game.divisionId));
  const { arrivalLeadMinutes, wrapUpMinutes, sameVenueGapMinutes, minRestMinutes } = policy;
  const { circuity, speedKmh, fixedMinutes } = travelModel;
  const problem: SlateProblem = {
    format: 'slate-problem/1',
    name: slate.name,
    timeZone,
    policy: { arrivalLeadMinutes, wrapUpMinutes, sameVenueGapMinutes, minRestMinutes, weights },
    travel: { circuity, speedKmh, fixedMinutes, legs: mapLegs(records, placeIds) },
    places: inOrder(records.places.filter((place) => placeIds.has(place.id))).map((place) => ({
      id: place.id,
      lat: place.latitude,
      lon: place.longitude,
    })),
    divisions: inOrder(records.divisions.filter((division) => divisionIds.has(division.id))).map(
      ({ id, chiefMinLevel, umpireMinLevel, chiefTargetLevel, umpireTargetLevel, pairingCost }) => ({
        id,
        chiefMinLevel,
        umpireMinLevel,
        chiefTargetLevel,
        umpireTargetLevel,
        pairingCost,
      }),
    ),
    officials: mapOfficials(officials, games, records, history),
    games: mapGames(games, records, takingPart, faults),
    meta: { names: namesOf(records) },
  };
  return { problem, faults };
}

/** The names that `mapSlateProblem` put beside the ids; empty for a problem from elsewhere. */
export function namesIn(problem: SlateProblem): ProblemNames {
  const meta = problem.meta as { readonly names?: ProblemNames } | undefined;
  return meta?.names ?? { officials: {}, games: {} };
}

function travelMinutesOf(records: Pick<SlateRecords, 'places' | 'legs' | 'travelModel'>): TravelMinutes {
  const placeById = new Map(records.places.map((place) => [place.id, place]));
  const legs = measuredLegs(records.legs);
  return (fromPlaceId, toPlaceId) => {
    const from = placeById.get(fromPlaceId);
    const to = placeById.get(toPlaceId);
    return from === undefined || to === undefined
      ? 0
      : travelBetween({ from, to }, records.travelModel, legs).minutes;
  };
}

function mapLegs(records: Pick<SlateRecords, 'legs'>, placeIds: ReadonlySet<string>) {
  return records.legs
    .filter((leg) => placeIds.has(leg.fromPlaceId) && placeIds.has(leg.toPlaceId))
    .map((leg) => ({ from: leg.fromPlaceId, to: leg.toPlaceId, minutes: leg.minutes, metres: leg.metres }))
    .sort((left, right) => (`${left.from} ${left.to}` < `${right.from} ${right.to}` ? -1 : 1));
}

/** Of everybody and every game, also those who take no part: reasons may name them. */
function namesOf({ officials, games }: Pick<SlateRecords, 'officials' | 'games'>): ProblemNames {
  return {
    officials: Object.fromEntries(
      inOrder(officials).map(({ id, givenName, familyName }) => [id, `${givenName} ${familyName}`]),
    ),
    games: Object.fromEntries(inOrder(games).map(({ id, number }) => [id, number])),
  };
}

function inOrder<Row extends { readonly id: string }>(rows: readonly Row[]): Row[] {
  return [...rows].sort((left, right) => (left.id < right.id ? -1 : 1));
}
