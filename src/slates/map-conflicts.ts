import type { Official as ProblemOfficial } from '../solver';
import type { PlayedGame } from './map-games';
import { listed } from './listed';
import type { SlateRecords } from './slate-records';

/**
 * The problem file has no dates on conflicts, so one that holds on the day of any game concerned holds for the
 * whole slate: a team's or venue's on any day it plays or is played in, another official's on any day at all.
 */
export function conflictsOf(
  officialId: string,
  games: readonly PlayedGame[],
  records: SlateRecords,
  takingPart: ReadonlySet<string>,
): Pick<ProblemOfficial, 'avoidTeams' | 'avoidVenues' | 'avoidOfficials'> {
  const own = records.conflicts.filter((conflict) => conflict.officialId === officialId);
  const holds = (conflict: (typeof own)[number], concerned: readonly PlayedGame[]) =>
    concerned.some(
      ({ localDate }) =>
        (conflict.since === null || conflict.since <= localDate) &&
        (conflict.until === null || localDate <= conflict.until),
    );
  const teams = own.flatMap((conflict) => {
    const { teamId } = conflict;
    if (teamId === null) return [];
    const concerned = games.filter((game) => game.homeTeamId === teamId || game.awayTeamId === teamId);
    return holds(conflict, concerned) ? [teamId] : [];
  });
  const venues = own.flatMap((conflict) => {
    const concerned = games.filter((game) => game.venueId === conflict.venueId);
    return conflict.venueId !== null && holds(conflict, concerned)
      ? concerned.map((game) => game.placeId)
      : [];
  });
  const others = own.flatMap((conflict) => {
    const { otherOfficialId: other } = conflict;
    return other !== null && takingPart.has(other) && holds(conflict, games) ? [other] : [];
  });
  return {
    ...listed('avoidTeams', unique(teams)),
    ...listed('avoidVenues', unique(venues)),
    ...listed('avoidOfficials', unique(others)),
  };
}

function unique(ids: readonly string[]): string[] {
  return [...new Set(ids)].sort();
}
