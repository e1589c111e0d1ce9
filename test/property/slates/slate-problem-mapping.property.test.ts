// Goal: whatever an association has entered, the mapped problem passes the solver's own reader, and a mapped official is never
// offered time that is taken. Method: random records, faulty ones on purpose; the cases that reach the end are counted.
import fc from 'fast-check';
import { readProblem } from '../../../src/solver';
import { mapSlateProblem } from '../../../src/slates/slate-problem-mapping';
import type { SlateRecords } from '../../../src/slates/slate-records';
import { recordedGame, recordedOfficial, slateRecords } from '../../unit/slates/slate-records.builder';

const hourMs = 3_600_000;
const friday = Date.parse('2026-11-26T23:00:00Z');
const instant = fc.integer({ min: 0, max: 4 * 24 * 4 }).map((quarters) => friday + (quarters * hourMs) / 4);
const interval = fc
  .tuple(instant, fc.integer({ min: 1, max: 48 }))
  .map(([from, quarters]) => ({ from, to: from + (quarters * hourMs) / 4 }));
const day = fc.constantFrom('2026-11-27', '2026-11-28', '2026-11-29', '2026-11-30');
const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: null });
const officialIds = ['o1', 'o2', 'o3', 'o4'];
const teamIds = ['t1', 't2', 't3'];
const placeIds = ['home', 'place', 'far'];
const venueIds = ['venue', 'second', 'nowhere'];
const gameIds = ['g1', 'g2', 'g3', 'g4'];
const oneOf = (ids: readonly string[]) => fc.constantFrom(...ids);

const official = (id: string) =>
  fc
    .record({
      level: fc.integer({ min: 1, max: 5 }),
      mayBeChief: fc.boolean(),
      homePlaceId: maybe(oneOf(placeIds)),
      maxGamesPerDay: fc.integer({ min: 0, max: 4 }),
      maxGamesPerSlate: fc.integer({ min: 0, max: 6 }),
      wishedGamesPerSlate: maybe(fc.double({ min: 0, max: 6, noNaN: true })),
      certificateExpiresOn: maybe(day),
      active: fc.boolean(),
      isMinor: fc.boolean(),
    })
    .map((fields) => recordedOfficial({ id, ...fields }));
const game = (id: string) =>
  fc
    .record({
      startsAt: instant.map((ms) => new Date(ms)),
      localDate: day,
      venueId: oneOf(venueIds),
      courtId: maybe(fc.constant('court')),
      durationMinutes: fc.integer({ min: 1, max: 120 }),
      homeTeamId: oneOf(teamIds),
      status: fc.constantFrom('TENTATIVE' as const, 'CONFIRMED' as const, 'CANCELLED' as const),
    })
    .map((fields) => recordedGame({ id, ...fields, awayTeamId: fields.homeTeamId === 't1' ? 't2' : 't1' }));
const seatName = fc.constantFrom('chief' as const, 'umpire' as const);

const records: fc.Arbitrary<SlateRecords> = fc
  .record({
    officials: fc.tuple(...officialIds.map(official)),
    games: fc.tuple(...gameIds.map(game)),
    free: fc.tuple(...officialIds.map(() => fc.array(interval, { maxLength: 4 }))),
    reluctant: fc.array(interval, { maxLength: 2 }),
    conflicts: fc.array(
      fc
        .record({
          officialId: oneOf(officialIds),
          target: fc.oneof(
            oneOf(teamIds).map((teamId) => ({ teamId, venueId: null, otherOfficialId: null })),
            oneOf(venueIds).map((venueId) => ({ teamId: null, venueId, otherOfficialId: null })),
            oneOf(officialIds).map((otherOfficialId) => ({ teamId: null, venueId: null, otherOfficialId })),
          ),
          since: maybe(day),
          until: maybe(day),
        })
        .map(({ target, ...rest }) => ({ ...rest, ...target })),
      { maxLength: 5 },
    ),
    seats: fc.uniqueArray(
      fc.record({
        gameId: oneOf(gameIds),
        seat: seatName,
        officialId: maybe(oneOf(officialIds)),
        locked: fc.boolean(),
      }),
      { maxLength: 6, selector: ({ gameId, seat }) => `${gameId} ${seat}` },
    ),
    assignments: fc.array(
      fc.record({ gameId: oneOf(gameIds), seat: seatName, officialId: oneOf([...officialIds, 'gone']) }),
      { maxLength: 4 },
    ),
    declined: fc.array(
      fc.record({ officialId: oneOf(officialIds), startsAt: instant.map((ms) => new Date(ms)) }),
      { maxLength: 3 },
    ),
    elsewhere: fc.array(
      fc
        .record({
          officialId: oneOf(officialIds),
          placeId: maybe(oneOf(placeIds)),
          localDate: day,
          span: interval,
        })
        .map(({ span, ...duty }) => ({
          ...duty,
          dutyStartsAt: new Date(span.from),
          dutyEndsAt: new Date(span.to),
        })),
      { maxLength: 3 },
    ),
    past: fc.array(
      fc.record({
        gameId: oneOf(['p1', 'p2', 'p3']),
        officialId: oneOf([...officialIds, 'gone']),
        localDate: fc.constantFrom('2026-03-01', '2026-09-05', '2026-11-21'),
        homeTeamId: oneOf(teamIds),
        awayTeamId: fc.constant('t9'),
      }),
      { maxLength: 8 },
    ),
    legs: fc.uniqueArray(
      fc.record({
        fromPlaceId: oneOf(placeIds),
        toPlaceId: oneOf(placeIds),
        minutes: fc.integer({ min: 0, max: 90 }),
        metres: fc.integer({ min: 0, max: 90_000 }),
        model: fc.constant(''),
      }),
      { maxLength: 4, selector: (leg) => `${leg.fromPlaceId} ${leg.toPlaceId}` },
    ),
  })
  .map(({ free, reluctant, assignments, ...rest }) =>
    slateRecords({
      ...rest,
      freeTimeByOfficialId: new Map(
        officialIds.map((id, index) => [id, { available: free[index] ?? [], reluctant }]),
      ),
      assignments: assignments.map((row, index) => ({
        ...row,
        id: `a${index}`,
        venueId: 'venue',
        startsAt: new Date(friday),
        endsAt: new Date(friday + hourMs),
      })),
      places: [
        { id: 'home', latitude: 48.2, longitude: 16.3 },
        { id: 'place', latitude: 48.3, longitude: 16.4 },
        { id: 'far', latitude: 47.1, longitude: 15.4 },
      ],
      venues: [
        { id: 'venue', code: 'V', name: 'Dune Hall', placeId: 'place' },
        { id: 'second', code: 'S', name: 'Shore Gym', placeId: 'far' },
        { id: 'nowhere', code: 'N', name: 'Lost Gym', placeId: null },
      ],
    }),
  );

describe('any records', () => {
  let solvable = 0;
  let withCuts = 0;
  afterAll(() => {
    expect(solvable).toBeGreaterThan(50);
    expect(withCuts).toBeGreaterThan(50);
  });

  it('map to a problem that the reader accepts', () => {
    fc.assert(
      fc.property(records, (any) => {
        const { problem, faults } = mapSlateProblem(any);
        expect(readProblem(JSON.parse(JSON.stringify(problem)))).toMatchObject({ ok: true });
        if (!faults.some((fault) => fault.severity === 'stops')) solvable += 1;
      }),
      { numRuns: 300, seed: 2026 },
    );
  });

  it('never offer a declined minute or a duty elsewhere, nor time that was not declared', () => {
    fc.assert(
      fc.property(records, (any) => {
        const { problem } = mapSlateProblem(any);
        for (const mapped of problem.officials) {
          const declared = any.freeTimeByOfficialId.get(mapped.id)?.available ?? [];
          const taken = [
            ...any.declined
              .filter(({ officialId }) => officialId === mapped.id)
              .map(({ startsAt }) => ({ from: startsAt.getTime(), to: startsAt.getTime() + 60_000 })),
            ...any.elsewhere
              .filter(({ officialId }) => officialId === mapped.id)
              .map((duty) => ({ from: duty.dutyStartsAt.getTime(), to: duty.dutyEndsAt.getTime() })),
          ];
          if (taken.length > 0) withCuts += 1;
          for (const window of mapped.available) {
            const from = Date.parse(window.from);
            const to = Date.parse(window.to);
            for (const cut of taken) expect(to <= cut.from || cut.to <= from).toBe(true);
            // Every minute looked at lies in some declared interval.
            for (let at = from; at < to; at += hourMs / 4) {
              expect(declared.some((interval) => interval.from <= at && at < interval.to)).toBe(true);
            }
          }
        }
      }),
      { numRuns: 300, seed: 2027 },
    );
  });

  it('give targets between 0 and what the official had plus the limit of the slate', () => {
    fc.assert(
      fc.property(records, (any) => {
        for (const mapped of mapSlateProblem(any).problem.officials) {
          expect(mapped.targetGames).toBeGreaterThanOrEqual(0);
          expect(mapped.targetGames).toBeLessThanOrEqual(mapped.priorGames + mapped.maxGames + 1e-9);
        }
      }),
      { numRuns: 200, seed: 2028 },
    );
  });
});
