import type { Game, Official, Place, SlateProblem, TimeWindow } from '../../../src/solver';
import { SeededRandom } from '../../../src/solver/random';

/** Size and kind of a random slate. */
export interface RandomSlateOptions {
  readonly seed: number;
  readonly games: number;
  readonly officials: number;
  readonly venues?: number;
  /** Saturday alone or the whole weekend. */
  readonly days?: 1 | 2;
  /** Share of officials who may be chief; low figures make chiefs scarce. */
  readonly chiefShare?: number;
  readonly minorShare?: number;
  /** Share of games with published officials, locks, or measured legs among the venues. */
  readonly publishedShare?: number;
  readonly lockedShare?: number;
  readonly legShare?: number;
}

const DIVISIONS: SlateProblem['divisions'] = [
  {
    id: 'youth',
    chiefMinLevel: 1,
    umpireMinLevel: 1,
    chiefTargetLevel: 2,
    umpireTargetLevel: 1,
    pairingCost: [8, 0, 1, 6],
  },
  {
    id: 'junior',
    chiefMinLevel: 2,
    umpireMinLevel: 1,
    chiefTargetLevel: 3,
    umpireTargetLevel: 2,
    pairingCost: [5, 0, 3, 9],
  },
  {
    id: 'senior',
    chiefMinLevel: 3,
    umpireMinLevel: 2,
    chiefTargetLevel: 4,
    umpireTargetLevel: 3,
    pairingCost: [1, 0, 8],
  },
];
const SATURDAY_MS = Date.UTC(2026, 9, 24);
const HOUR_MS = 3_600_000;

/** A made-up association's weekend: gyms in towns, a ladder of levels, part-time availability, a season behind it. */
export function randomSlate(options: RandomSlateOptions): SlateProblem {
  const random = new SeededRandom(options.seed, 77);
  const { days = 2, venues: venueCount = Math.max(1, Math.round(options.games / 8)) } = options;
  const near = (): Omit<Place, 'id'> => ({
    lat: round6(46 + (random.unit() - 0.5) * 0.5),
    lon: round6(9 + (random.unit() - 0.5) * 0.7),
  });
  const venues = Array.from({ length: venueCount }, (_, i): Place => ({ id: `gym-${i + 1}`, ...near() }));
  const homes = Array.from({ length: options.officials }, (_, i): Place => ({
    id: `home-${i + 1}`,
    ...near(),
  }));
  const officials = homes.map((home, i) => randomOfficial(random, options, i, home.id));
  const games = venues.flatMap((venue, v) => {
    const count =
      Math.floor((options.games * (v + 1)) / venueCount) - Math.floor((options.games * v) / venueCount);
    return randomGames(random, options, {
      venue: venue.id,
      first: Math.floor((options.games * v) / venueCount),
      count,
      days,
    });
  });
  const legs = venues.flatMap((from) =>
    venues
      .filter((to) => to !== from && random.unit() < (options.legShare ?? 0.1))
      .map((to) => ({
        from: from.id,
        to: to.id,
        minutes: 5 + random.below(70),
        metres: 4000 + random.below(60_000),
      })),
  );
  return {
    format: 'slate-problem/1',
    name: `random ${options.seed}`,
    timeZone: 'Europe/Vienna',
    policy: {
      arrivalLeadMinutes: 20,
      wrapUpMinutes: 10,
      sameVenueGapMinutes: 5,
      minRestMinutes: 540,
      weights: {
        openSeat: 10000,
        travelPerKm: 1,
        balance: 8,
        teamRepeat: 15,
        partnerRepeat: 10,
        overLevel: 12,
        reluctant: 25,
        change: 60,
      },
    },
    travel: { circuity: 1.3, speedKmh: 58, fixedMinutes: 4, legs },
    places: [...venues, ...homes],
    divisions: DIVISIONS,
    officials,
    games: games.map((game) => withHistory(random, options, game, officials)),
  };
}

function randomOfficial(
  random: SeededRandom,
  options: RandomSlateOptions,
  index: number,
  home: string,
): Official {
  const level = 1 + Math.floor(4.999 * random.unit() ** 1.3);
  const chance = (share: number) => random.unit() < share;
  const someTeams = () => Array.from({ length: 1 + random.below(2) }, () => `team-${1 + random.below(12)}`);
  const priorGames = random.below(20);
  return {
    id: `official-${index + 1}`,
    level,
    mayBeChief: level >= 2 && chance(options.chiefShare ?? 0.85),
    minor: level <= 2 && chance(options.minorShare ?? 0.3),
    home,
    maxHomeMinutes: 40 + random.below(50),
    maxGamesPerDay: 1 + random.below(4),
    maxGames: 2 + random.below(5),
    available: randomWindows(random, 0.15),
    ...(chance(0.3) ? { reluctant: randomWindows(random, 0.6) } : {}),
    priorGames,
    targetGames: Math.round(10 * (priorGames + 4 * random.unit())) / 10,
    ...(chance(0.2) ? { avoidTeams: someTeams() } : {}),
    ...(chance(0.05) ? { avoidVenues: ['gym-1'] } : {}),
    ...(chance(0.1) ? { avoidOfficials: [`official-${1 + random.below(options.officials)}`] } : {}),
    ...(chance(0.5)
      ? { recentTeams: Object.fromEntries(someTeams().map((team) => [team, 1 + random.below(3)])) }
      : {}),
    ...(chance(0.5)
      ? { recentPartners: { [`official-${1 + random.below(options.officials)}`]: 1 + random.below(3) } }
      : {}),
  };
}

/** Part of Saturday and part of Sunday, each missing with the given probability; the last is never missing. */
function randomWindows(random: SeededRandom, missingShare: number): TimeWindow[] {
  return [0, 1]
    .filter((day) => day === 1 || random.unit() >= missingShare)
    .map((day) => {
      const fromMs = SATURDAY_MS + (24 * day + 5 + random.below(8)) * HOUR_MS;
      return { from: iso(fromMs), to: iso(fromMs + (6 + random.below(9)) * HOUR_MS) };
    });
}

interface VenueGames {
  readonly venue: string;
  readonly first: number;
  readonly count: number;
  readonly days: number;
}

function randomGames(
  random: SeededRandom,
  _options: RandomSlateOptions,
  { venue, first, count, days }: VenueGames,
): Game[] {
  return Array.from({ length: count }, (_, i): Game => {
    const day = days === 1 ? 0 : i % 2;
    const hours = 7 + Math.floor(i / days) * 1.5 + 0.25 * random.below(4);
    const [home, away] = [1 + random.below(12), 1 + random.below(12)];
    return {
      id: `game-${first + i + 1}`,
      tipOff: iso(SATURDAY_MS + (24 * day + Math.min(hours, 20)) * HOUR_MS),
      durationMinutes: 60 + 15 * random.below(3),
      venue,
      division: DIVISIONS[random.below(DIVISIONS.length)]!.id,
      home: `team-${home}`,
      away: `team-${away}`,
      priority: random.unit() < 0.2 ? 2 : 1,
    };
  });
}

function withHistory(
  random: SeededRandom,
  options: RandomSlateOptions,
  game: Game,
  officials: readonly Official[],
): Game {
  const someone = () => officials[random.below(officials.length)]!.id;
  const published = officials.length > 0 && random.unit() < (options.publishedShare ?? 0);
  const locked = random.unit() < (options.lockedShare ?? 0);
  return {
    ...game,
    ...(published ? { published: { chief: someone(), umpire: someone() } } : {}),
    ...(locked
      ? { locked: random.unit() < 0.5 || officials.length === 0 ? { umpire: null } : { chief: someone() } }
      : {}),
  };
}

function iso(ms: number): string {
  return new Date(ms).toISOString();
}

function round6(degrees: number): number {
  return Math.round(degrees * 1e6) / 1e6;
}
