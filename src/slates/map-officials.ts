import type { Official as ProblemOfficial, TimeWindow } from '../solver';
import type { FreeOfficial } from './free-officials';
import { liesWithin, mergeIntervals, type Interval } from './intervals';
import { listed } from './listed';
import { conflictsOf } from './map-conflicts';
import type { PlayedGame } from './map-games';
import { noHistory, type OfficialHistory } from './season-history';
import type { SlateRecords } from './slate-records';
import { targetGames, type TargetInput } from './target-games';

const minuteMs = 60_000;

/** The officials section. */
export function mapOfficials(
  officials: readonly FreeOfficial[],
  games: readonly PlayedGame[],
  records: SlateRecords,
  historyByOfficialId: ReadonlyMap<string, OfficialHistory>,
): ProblemOfficial[] {
  const takingPart = new Set(officials.map((official) => official.id));
  const teamIds = new Set(games.flatMap((game) => [game.homeTeamId, game.awayTeamId]));
  const history = (id: string) => historyByOfficialId.get(id) ?? noHistory;
  const targets = targetGames(
    officials.map((official): TargetInput => ({
      id: official.id,
      priorGames: history(official.id).priorGames,
      wishedGames: official.wishedGamesPerSlate,
      maxGames: official.maxGamesPerSlate,
      maxGamesPerDay: official.gamesADayMax,
      playableGamesByDate: playableGamesByDate(official, games, records),
    })),
    { games: games.length, seats: seatsToFill(games, records) },
  );
  return officials.map((official) => {
    const { priorGames, recentPartners, recentTeams } = history(official.id);
    const reluctant = windows(records.freeTimeByOfficialId.get(official.id)?.reluctant ?? []);
    return {
      id: official.id,
      level: official.level,
      mayBeChief: official.mayBeChief,
      minor: official.isMinor,
      home: official.homePlaceId,
      maxHomeMinutes: official.maxHomeMinutes,
      maxGamesPerDay: official.gamesADayMax,
      maxGames: official.maxGamesPerSlate,
      available: windows(official.available),
      ...(reluctant.length > 0 && { reluctant }),
      priorGames,
      targetGames: targets.get(official.id) ?? priorGames,
      ...conflictsOf(official.id, games, records, takingPart),
      ...listed('recentTeams', only(recentTeams, teamIds)),
      ...listed('recentPartners', only(recentPartners, takingPart)),
    };
  });
}

function playableGamesByDate(
  official: FreeOfficial,
  games: readonly PlayedGame[],
  records: SlateRecords,
): Map<string, number> {
  const divisionById = new Map(records.divisions.map((division) => [division.id, division]));
  const merged = mergeIntervals(official.available);
  const counts = new Map<string, number>();
  for (const game of games) {
    const division = divisionById.get(game.divisionId);
    if (division === undefined) continue;
    const mayBeUmpire = official.level >= division.umpireMinLevel;
    const mayBeChief = official.mayBeChief && official.level >= division.chiefMinLevel;
    if ((mayBeUmpire || mayBeChief) && liesWithin(dutyOf(game, records), merged)) {
      counts.set(game.localDate, (counts.get(game.localDate) ?? 0) + 1);
    }
  }
  return counts;
}

function dutyOf(game: PlayedGame, { policy }: Pick<SlateRecords, 'policy'>): Interval {
  const tipOff = game.startsAt.getTime();
  return {
    from: tipOff - policy.arrivalLeadMinutes * minuteMs,
    to: tipOff + (game.durationMinutes + policy.wrapUpMinutes) * minuteMs,
  };
}

/** All seats but those that stay open on purpose. */
function seatsToFill(games: readonly PlayedGame[], records: SlateRecords): number {
  const gameIds = new Set(games.map((game) => game.id));
  const keptOpen = records.seats.filter(
    (seat) => gameIds.has(seat.gameId) && seat.locked && seat.officialId === null,
  );
  return 2 * games.length - keptOpen.length;
}

function windows(intervals: readonly Interval[]): TimeWindow[] {
  return mergeIntervals(intervals).map(({ from, to }) => ({
    from: new Date(from).toISOString(),
    to: new Date(to).toISOString(),
  }));
}

function only(counts: Readonly<Record<string, number>>, ids: ReadonlySet<string>): Record<string, number> {
  return Object.fromEntries(Object.entries(counts).filter(([id]) => ids.has(id)));
}
