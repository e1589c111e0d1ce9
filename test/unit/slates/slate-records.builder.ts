import { associationPolicySchema, slateWeightsSchema } from '../../../src/access/association-policy';
import type { RecordedGame, RecordedOfficial, SlateRecords } from '../../../src/slates/slate-records';

/** An official who may do everything, unless stated otherwise. */
export function recordedOfficial(overrides: Partial<RecordedOfficial> & { id: string }): RecordedOfficial {
  return {
    number: overrides.id.toUpperCase(),
    givenName: 'Given',
    familyName: overrides.id,
    level: 5,
    mayBeChief: true,
    homePlaceId: 'home',
    maxHomeMinutes: 120,
    maxGamesPerDay: 2,
    maxGamesPerSlate: 4,
    wishedGamesPerSlate: null,
    certificateExpiresOn: null,
    active: true,
    isMinor: false,
    ...overrides,
  };
}

/** A game at 15:00 in Europe/Vienna (CET) on the slate's Saturday, unless stated otherwise. */
export function recordedGame(overrides: Partial<RecordedGame> & { id: string }): RecordedGame {
  return {
    number: overrides.id.toUpperCase(),
    divisionId: 'division',
    venueId: 'venue',
    courtId: 'court',
    localDate: '2026-11-28',
    startsAt: new Date('2026-11-28T14:00:00Z'),
    durationMinutes: 90,
    homeTeamId: 'team-a',
    awayTeamId: 'team-b',
    priority: 1,
    status: 'CONFIRMED',
    ...overrides,
  };
}

/** Saturday and Sunday 28 and 29 November 2026 with one game, two officials who are always free, one hall. */
export function slateRecords(overrides: Partial<SlateRecords> = {}): SlateRecords {
  const officials = overrides.officials ?? [recordedOfficial({ id: 'o1' }), recordedOfficial({ id: 'o2' })];
  return {
    slate: { id: 'slate', name: 'Weekend', fromDate: '2026-11-28', toDate: '2026-11-29', version: 1 },
    timeZone: 'Europe/Vienna',
    policy: associationPolicySchema.parse({}),
    weights: slateWeightsSchema.parse({}),
    travelModel: { name: 'car', circuity: 1.3, speedKmh: 50, fixedMinutes: 5 },
    officials,
    freeTimeByOfficialId: new Map(
      officials.map(({ id }) => [
        id,
        {
          available: [{ from: Date.parse('2026-11-27T23:00:00Z'), to: Date.parse('2026-11-29T23:00:00Z') }],
          reluctant: [],
        },
      ]),
    ),
    conflicts: [],
    places: [
      { id: 'home', latitude: 48.2, longitude: 16.3 },
      { id: 'place', latitude: 48.3, longitude: 16.4 },
    ],
    legs: [],
    venues: [{ id: 'venue', code: 'V', name: 'Dune Hall', placeId: 'place' }],
    divisions: [
      {
        id: 'division',
        code: 'D',
        chiefMinLevel: 3,
        umpireMinLevel: 1,
        chiefTargetLevel: 4,
        umpireTargetLevel: 2,
        pairingCost: [4, 0, 2],
      },
    ],
    games: [recordedGame({ id: 'g1' })],
    seats: [],
    assignments: [],
    declined: [],
    elsewhere: [],
    past: [],
    ...overrides,
  };
}
