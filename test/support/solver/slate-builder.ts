import type { Game, Official, Place, SlateProblem, Weights } from '../../../src/solver';

/** One place for everything, no weights, a quiet Saturday: a test states only what it is about. */
export const NO_WEIGHTS: Weights = {
  openSeat: 0,
  travelPerKm: 0,
  balance: 0,
  teamRepeat: 0,
  partnerRepeat: 0,
  overLevel: 0,
  reluctant: 0,
  change: 0,
};

export function anOfficial(id: string, own: Partial<Official> = {}): Official {
  return {
    id,
    level: 3,
    mayBeChief: true,
    minor: false,
    home: 'hall',
    maxHomeMinutes: 600,
    maxGamesPerDay: 9,
    maxGames: 9,
    available: [{ from: '2026-01-01T00:00:00Z', to: '2027-01-01T00:00:00Z' }],
    priorGames: 0,
    targetGames: 0,
    ...own,
  };
}

export function aGame(id: string, tipOff: string, own: Partial<Game> = {}): Game {
  const teams = { home: `home of ${id}`, away: `away of ${id}` };
  return { id, tipOff, durationMinutes: 75, venue: 'hall', division: 'open', ...teams, priority: 1, ...own };
}

export const HALL: Place = { id: 'hall', lat: 45, lon: 8 };

export interface ProblemParts {
  readonly officials?: readonly Official[];
  readonly games?: readonly Game[];
  readonly weights?: Partial<Weights>;
  readonly own?: Partial<Omit<SlateProblem, 'policy'>>;
  readonly policy?: Partial<Omit<SlateProblem['policy'], 'weights'>>;
}

export function aProblem({
  officials = [],
  games = [],
  weights = {},
  own = {},
  policy = {},
}: ProblemParts): SlateProblem {
  return {
    format: 'slate-problem/1',
    name: 'hand-made',
    timeZone: 'Europe/Vienna',
    policy: {
      arrivalLeadMinutes: 20,
      wrapUpMinutes: 10,
      sameVenueGapMinutes: 5,
      minRestMinutes: 540,
      ...policy,
      weights: { ...NO_WEIGHTS, ...weights },
    },
    travel: { circuity: 1.3, speedKmh: 60, fixedMinutes: 4 },
    places: [HALL],
    divisions: [
      {
        id: 'open',
        chiefMinLevel: 1,
        umpireMinLevel: 1,
        chiefTargetLevel: 3,
        umpireTargetLevel: 2,
        pairingCost: [6, 0, 2],
      },
    ],
    officials,
    games,
    ...own,
  };
}
