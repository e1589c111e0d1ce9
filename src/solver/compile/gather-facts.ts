import { type Place, type SlateProblem } from '../problem';
import { TravelTables } from '../travel';
import { sharedFloat64, sharedInt32 } from './arrays';
import { type SlateFacts } from './facts';
import { gatherDivisions, gatherGames, gatherSeats, type DatedGame } from './gather-games';
import { gatherOfficials } from './gather-officials';
import { localDate } from './local-date';

/** Text order as JavaScript's `<` compares strings: by UTF-16 code units, the same on every machine. */
export function compareIds(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** Replaces ids by indexes and instants by numbers. */
export function gatherFacts(problem: SlateProblem): SlateFacts {
  const dateOf = localDate(problem.timeZone);
  const dated = problem.games.map((game): DatedGame => {
    const tipOffMs = Date.parse(game.tipOff);
    return { game, tipOffMs, day: dateOf(tipOffMs) };
  });
  const days = orderDays(dated);
  const dayIndexByName = new Map(days.map((day, index) => [day, index]));
  dated.sort(
    (a, b) =>
      dayIndexByName.get(a.day)! - dayIndexByName.get(b.day)! ||
      a.tipOffMs - b.tipOffMs ||
      compareIds(a.game.id, b.game.id),
  );
  const officials = [...problem.officials].sort((a, b) => compareIds(a.id, b.id));
  const officialIndexById = new Map(officials.map((official, index) => [official.id, index]));
  const venueIds = [...new Set(dated.map(({ game }) => game.venue))].sort(compareIds);
  const venueIndexById = new Map(venueIds.map((id, index) => [id, index]));
  const teamIds = [...new Set(dated.flatMap(({ game }) => [game.home, game.away]))];
  const teamIndexById = new Map(teamIds.map((id, index) => [id, index]));
  const divisionIds = [...new Set(dated.map(({ game }) => game.division))];

  const ways = new TravelTables(problem.travel, problem.places);
  const venuePlaces = venueIds.map((id) => ways.placeIndex(id));
  const homePlaces = officials.map((official) => ways.placeIndex(official.home));
  const outward = ways.table(homePlaces, venuePlaces);
  return {
    gameCount: dated.length,
    officialCount: officials.length,
    dayCount: days.length,
    venueCount: venueIds.length,
    gameIds: dated.map(({ game }) => game.id),
    officialIds: officials.map((official) => official.id),
    venueIds,
    teamIds,
    divisionIds,
    dayNames: days,
    arrivalLeadMinutes: problem.policy.arrivalLeadMinutes,
    wrapUpMinutes: problem.policy.wrapUpMinutes,
    sameVenueGapMinutes: problem.policy.sameVenueGapMinutes,
    minRestMinutes: problem.policy.minRestMinutes,
    weights: problem.policy.weights,
    ...gatherGames(dated, problem.policy, { dayIndexByName, venueIndexById, teamIndexById, divisionIds }),
    ...daySpans(dated, days),
    ...gatherSeats(dated, officialIndexById),
    ...gatherDivisions(divisionIds, problem.divisions),
    ...gatherOfficials(officials, dated.length, { officialIndexById, venueIndexById, teamIndexById }),
    ...mapOfVenues(venuePlaces.map((index) => problem.places[index]!)),
    betweenVenues: ways.table(venuePlaces, venuePlaces),
    outward,
    homeward: ways.asymmetric ? ways.table(homePlaces, venuePlaces, true) : outward,
  };
}

function mapOfVenues(venues: readonly Place[]): Pick<SlateFacts, 'venueX' | 'venueY'> {
  const venueX = sharedFloat64(venues.length);
  const venueY = sharedFloat64(venues.length);
  venues.forEach(({ lat, lon }, venue) => {
    venueX[venue] = lon * Math.cos((lat * Math.PI) / 180);
    venueY[venue] = lat;
  });
  return { venueX, venueY };
}

/** The local dates that have games, by their first tip-off. */
function orderDays(dated: readonly DatedGame[]): readonly string[] {
  const firstByDay = new Map<string, number>();
  for (const { day, tipOffMs } of dated) {
    firstByDay.set(day, Math.min(tipOffMs, firstByDay.get(day) ?? Infinity));
  }
  return [...firstByDay.entries()].sort((a, b) => a[1] - b[1]).map(([day]) => day);
}

/** Where each day begins in the sorted games, and whether any day reaches into the next one. */
function daySpans(
  dated: readonly DatedGame[],
  days: readonly string[],
): { dayStart: Int32Array; daysInterleave: boolean } {
  const dayStart = sharedInt32(days.length + 1);
  let game = 0;
  days.forEach((day, index) => {
    while (game < dated.length && dated[game]!.day === day) game++;
    dayStart[index + 1] = game;
  });
  const daysInterleave = dated.some(
    ({ tipOffMs }, index) => index > 0 && tipOffMs < dated[index - 1]!.tipOffMs,
  );
  return { dayStart, daysInterleave };
}
