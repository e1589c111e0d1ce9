import type { Game, Official, SlateProblem, TimeWindow, TravelLeg } from '../../../src/solver';
import { SeededRandom } from '../../../src/solver/random';
import { randomSlate } from './random-slate';

/** What is special about the times of a harsh slate. */
const HARSH_TIMES = ['weekend', 'three-days', 'over-midnight', 'clock-change', 'date-twice'] as const;
export type HarshTimes = (typeof HARSH_TIMES)[number];

/** A count of nought for each kind, for a property to count the cases that it met. */
export function countedTimes(): Record<HarshTimes, number> {
  return { weekend: 0, 'three-days': 0, 'over-midnight': 0, 'clock-change': 0, 'date-twice': 0 };
}

export interface HarshSlate {
  readonly problem: SlateProblem;
  readonly times: HarshTimes;
  /** All ways are estimates, so that they obey the triangle inequality but for rounding. */
  readonly metric: boolean;
}

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;
/** Clocks in Vienna go back an hour at 01:00 UTC of this Sunday. */
const SUNDAY_MS = Date.UTC(2026, 9, 25);
/** Clocks in St John's went from 00:01 of this Sunday back to 23:01 of Saturday (tz database, northamerica). */
const DATE_TWICE_MS = Date.UTC(2010, 10, 7, 2, 31);

/**
 * A tiny slate that tries everything at once: locks, minors, avoided and recent partners, published seats,
 * measured ways that break the triangle inequality and differ by direction, several days, games over
 * midnight and over changes of the clock, long gaps between games at one venue, open seats that are cheap.
 */
export function harshSlate(seed: number, size?: { games: number; officials: number }): HarshSlate {
  const random = new SeededRandom(seed, 4711);
  const times = HARSH_TIMES[seed % HARSH_TIMES.length]!;
  const metric = random.unit() < 0.35;
  const base = randomSlate({
    seed,
    games: size?.games ?? 2 + random.below(2),
    officials: size?.officials ?? 2 + random.below(2),
    venues: 1 + random.below(3),
    chiefShare: 0.95,
    minorShare: 0.4,
    publishedShare: 0.3,
    lockedShare: 0.12,
  });
  const { legs: _, ...model } = base.travel;
  const pick = <T>(values: readonly T[]): T => values[random.below(values.length)]!;
  const problem: SlateProblem = {
    ...base,
    timeZone: times === 'date-twice' ? 'America/St_Johns' : base.timeZone,
    policy: {
      ...base.policy,
      minRestMinutes: pick([0, 60, 540]),
      sameVenueGapMinutes: pick([0, 5, 5, 240]),
      weights: { ...base.policy.weights, openSeat: pick([10_000, 200, 60]) },
    },
    travel: metric ? model : { ...model, legs: crookedLegs(random, base) },
    officials: base.officials.map((official) => obliging(random, official, base.officials)),
    games: base.games.map((game, index) => ({
      ...game,
      venue: pick(base.games).venue,
      ...timesOf(random, times, game, index),
    })),
  };
  return { problem, times, metric };
}

/** Ways of any length whatever, some of them with a way back of their own. */
function crookedLegs(random: SeededRandom, { places }: SlateProblem): TravelLeg[] {
  return places.flatMap((from) =>
    places
      .filter((to) => to !== from && random.unit() < 0.4)
      .map((to) => ({
        from: from.id,
        to: to.id,
        minutes: random.below(random.unit() < 0.2 ? 400 : 60),
        metres: random.below(60_000),
      })),
  );
}

/** Most people have time for most games, or hardly any slate would have a tour of two games. */
function obliging(random: SeededRandom, official: Official, all: readonly Official[]): Official {
  const always: TimeWindow = { from: '2010-01-01T00:00:00Z', to: '2027-01-01T00:00:00Z' };
  const avoided = all[random.below(all.length)]!.id;
  const { avoidOfficials: _, ...rest } = official;
  return {
    ...rest,
    level: 2 + random.below(3),
    maxHomeMinutes: 90,
    maxGamesPerDay: 1 + random.below(4),
    available: random.unit() < 0.85 ? [always] : official.available,
    ...(random.unit() < 0.2 && avoided !== official.id ? { avoidOfficials: [avoided] } : {}),
  };
}

function timesOf(
  random: SeededRandom,
  times: HarshTimes,
  game: Game,
  index: number,
): Pick<Game, 'tipOff' | 'durationMinutes'> {
  const at = (ms: number, durationMinutes = game.durationMinutes) => ({
    tipOff: new Date(ms).toISOString(),
    durationMinutes,
  });
  switch (times) {
    case 'weekend':
      return at(Date.parse(game.tipOff));
    case 'three-days':
      return at(SUNDAY_MS + 24 * HOUR_MS * (random.below(3) - 1) + (8 + 2.5 * (index % 4)) * HOUR_MS, 60);
    case 'over-midnight':
      return at(SUNDAY_MS + (17 + 2.25 * index + random.unit()) * HOUR_MS, 60);
    case 'clock-change':
      return at(SUNDAY_MS + (2 * index - 3 + random.unit()) * HOUR_MS, 45);
    case 'date-twice': {
      // On Saturday evening, in the one minute of Sunday before it is Saturday once more, and in that hour.
      const saturdayMs = DATE_TWICE_MS - (90 + random.below(60)) * MINUTE_MS;
      const againMs = DATE_TWICE_MS + random.below(59) * MINUTE_MS;
      return at([DATE_TWICE_MS - MINUTE_MS, againMs, saturdayMs][index % 3]!, 1 + random.below(30));
    }
  }
}
