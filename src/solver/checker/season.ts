import { type Division, type Game, type Official, type SlateProblem } from '../problem';
import { type Ways, waysOf } from './ways';

const MINUTE = 60_000;

/** A game with its instants worked out. */
export interface TimedGame {
  readonly game: Game;
  readonly division: Division;
  readonly tip: number;
  readonly end: number;
  readonly dutyFrom: number;
  readonly dutyTo: number;
  readonly day: string;
}

/** A problem, looked up by id. */
export interface Season {
  readonly problem: SlateProblem;
  readonly ways: Ways;
  readonly officials: ReadonlyMap<string, Official>;
  readonly games: readonly TimedGame[];
}

export function seasonOf(problem: SlateProblem): Season {
  const divisions = new Map(problem.divisions.map((division) => [division.id, division]));
  const { arrivalLeadMinutes, wrapUpMinutes } = problem.policy;
  const calendar = new Intl.DateTimeFormat('en-CA', {
    timeZone: problem.timeZone,
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
  });
  const games = problem.games.map((game): TimedGame => {
    const tip = Date.parse(game.tipOff);
    const end = tip + game.durationMinutes * MINUTE;
    return {
      game,
      division: divisions.get(game.division)!,
      tip,
      end,
      dutyFrom: tip - arrivalLeadMinutes * MINUTE,
      dutyTo: end + wrapUpMinutes * MINUTE,
      day: calendar.format(tip),
    };
  });
  const officials = new Map(problem.officials.map((official) => [official.id, official]));
  return { problem, ways: waysOf(problem), officials, games };
}

/** Who works a game; null is an open seat. */
export interface Crew {
  readonly chief: Official | null;
  readonly umpire: Official | null;
}

/** Each official's games in order of tip-off, by day. */
export type Tours = ReadonlyMap<Official, ReadonlyMap<string, readonly TimedGame[]>>;

export function toursOfCrews(season: Season, crews: readonly Crew[]): Tours {
  const tours = new Map<Official, Map<string, TimedGame[]>>();
  season.games.forEach((timed, index) => {
    const crew = crews[index]!;
    for (const official of new Set([crew.chief, crew.umpire])) {
      if (official === null) continue;
      const days = tours.get(official) ?? new Map<string, TimedGame[]>();
      days.set(timed.day, [...(days.get(timed.day) ?? []), timed]);
      tours.set(official, days);
    }
  });
  for (const days of tours.values()) {
    for (const tour of days.values()) tour.sort((a, b) => a.tip - b.tip || (a.game.id < b.game.id ? -1 : 1));
  }
  return tours;
}
