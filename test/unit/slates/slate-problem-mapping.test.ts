// Goal: what the association's records say reaches the solver, and what they lack is told.
// Method: hand-made records, one difference at a time; every mapped problem must pass the solver's own reader.
import { readProblem, type Official, type SlateProblem } from '../../../src/solver';
import { mapSlateProblem, namesIn } from '../../../src/slates/slate-problem-mapping';
import type { SlateRecords } from '../../../src/slates/slate-records';
import { recordedGame, recordedOfficial, slateRecords } from './slate-records.builder';

function mapped(overrides: Partial<SlateRecords> = {}) {
  const result = mapSlateProblem(slateRecords(overrides));
  const read = readProblem(JSON.parse(JSON.stringify(result.problem)));
  expect(read).toMatchObject({ ok: true });
  return result;
}

function official(problem: SlateProblem, id: string): Official {
  const found = problem.officials.find((candidate) => candidate.id === id);
  if (found === undefined) throw new Error(`${id} is not in the problem`);
  return found;
}

const codes = (faults: readonly { readonly code: string }[]) => faults.map((fault) => fault.code);

describe('the mapped problem', () => {
  it('carries policy, travel, places, divisions, officials and games, and passes the reader', () => {
    const { problem, faults } = mapped();
    expect(faults).toEqual([]);
    expect(problem.policy).toMatchObject({ arrivalLeadMinutes: 20, minRestMinutes: 660 });
    expect(problem.games[0]).toMatchObject({
      tipOff: '2026-11-28T14:00:00.000Z',
      venue: 'place',
      home: 'team-a',
    });
    expect(official(problem, 'o1').available).toEqual([
      { from: '2026-11-27T23:00:00.000Z', to: '2026-11-29T23:00:00.000Z' },
    ]);
    expect(namesIn(problem)).toEqual({ officials: { o1: 'Given o1', o2: 'Given o2' }, games: { g1: 'G1' } });
  });

  it('does not depend on the order of the records', () => {
    const records = slateRecords({
      games: [recordedGame({ id: 'g1' }), recordedGame({ id: 'g2' })],
      officials: [
        recordedOfficial({ id: 'o1' }),
        recordedOfficial({ id: 'o2' }),
        recordedOfficial({ id: 'o3' }),
      ],
    });
    const turned = {
      ...records,
      games: [...records.games].reverse(),
      officials: [...records.officials].reverse(),
      places: [...records.places].reverse(),
    };
    expect(JSON.stringify(mapSlateProblem(turned))).toBe(JSON.stringify(mapSlateProblem(records)));
  });
});

describe('who takes part', () => {
  it('leaves out inactive officials without a word', () => {
    const { problem, faults } = mapped({
      officials: [recordedOfficial({ id: 'o1' }), recordedOfficial({ id: 'o2', active: false })],
    });
    expect(problem.officials.map(({ id }) => id)).toEqual(['o1']);
    expect(faults).toEqual([]);
  });

  it('leaves out who has no home or an expired certificate, and says so with a link', () => {
    const { problem, faults } = mapped({
      officials: [
        recordedOfficial({ id: 'o1' }),
        recordedOfficial({ id: 'o2', homePlaceId: null }),
        recordedOfficial({ id: 'o3', certificateExpiresOn: '2026-11-27' }),
      ],
    });
    expect(problem.officials.map(({ id }) => id)).toEqual(['o1']);
    expect(faults).toMatchObject([
      { severity: 'left-out', code: 'official-without-home', link: { kind: 'official', id: 'o2' } },
      { severity: 'left-out', code: 'certificate-expired', link: { kind: 'official', id: 'o3' } },
    ]);
  });

  it('ends the availability with the last day of a certificate', () => {
    const { problem } = mapped({
      officials: [recordedOfficial({ id: 'o1', certificateExpiresOn: '2026-11-28' })],
    });
    expect(official(problem, 'o1').available).toEqual([
      { from: '2026-11-27T23:00:00.000Z', to: '2026-11-28T23:00:00.000Z' },
    ]);
  });

  it('notes who has not said when they are free', () => {
    const { faults } = mapped({ freeTimeByOfficialId: new Map() });
    expect(codes(faults)).toEqual(['official-without-availability', 'official-without-availability']);
  });

  it('stops without officials and without games', () => {
    const { faults } = mapSlateProblem(slateRecords({ officials: [], games: [] }));
    expect(faults.filter((fault) => fault.severity === 'stops').map((fault) => fault.code)).toEqual([
      'no-games',
      'no-officials',
    ]);
  });

  it('takes the minor flag as it stands on the first day', () => {
    const { problem } = mapped({ officials: [recordedOfficial({ id: 'o1', isMinor: true })] });
    expect(official(problem, 'o1').minor).toBe(true);
  });
});

describe('which games take part', () => {
  it('passes over cancelled games and reports those without a position or a court', () => {
    const { problem, faults } = mapped({
      games: [
        recordedGame({ id: 'g1', courtId: null }),
        recordedGame({ id: 'g2', status: 'CANCELLED' }),
        recordedGame({ id: 'g3', venueId: 'nowhere' }),
      ],
      venues: [
        { id: 'venue', code: 'V', name: 'Dune Hall', placeId: 'place' },
        { id: 'nowhere', code: 'N', name: 'Lost Gym', placeId: null },
      ],
    });
    expect(problem.games.map(({ id }) => id)).toEqual(['g1']);
    expect(faults).toMatchObject([
      { severity: 'note', code: 'game-without-court', link: { kind: 'game', id: 'g1' } },
      { severity: 'left-out', code: 'game-without-position', link: { kind: 'venue', id: 'nowhere' } },
    ]);
    expect(faults[1]?.message).toContain('Lost Gym');
  });

  it('maps locks, seats kept open on purpose and published seats', () => {
    const told = { id: 'a1', gameId: 'g1', venueId: 'venue', startsAt: new Date(0), endsAt: new Date(1) };
    const { problem } = mapped({
      seats: [
        { gameId: 'g1', seat: 'chief', officialId: 'o1', locked: true },
        { gameId: 'g1', seat: 'umpire', officialId: null, locked: true },
      ],
      assignments: [{ ...told, seat: 'umpire', officialId: 'o2' }],
    });
    expect(problem.games[0]).toMatchObject({
      locked: { chief: 'o1', umpire: null },
      published: { umpire: 'o2' },
    });
  });

  it('does not lock an unlocked seat, whoever sits there', () => {
    const { problem } = mapped({ seats: [{ gameId: 'g1', seat: 'chief', officialId: 'o1', locked: false }] });
    expect(problem.games[0]).not.toHaveProperty('locked');
  });

  it('stops at a lock on somebody who takes no part', () => {
    const { faults } = mapped({
      officials: [recordedOfficial({ id: 'o1' }), recordedOfficial({ id: 'o2', active: false })],
      seats: [{ gameId: 'g1', seat: 'chief', officialId: 'o2', locked: true }],
    });
    expect(faults).toMatchObject([{ severity: 'stops', code: 'locked-official-left-out' }]);
  });
});

describe('conflicts', () => {
  const conflict = {
    officialId: 'o1',
    teamId: null,
    venueId: null,
    otherOfficialId: null,
    since: null,
    until: null,
  };

  it('avoids team, venue and official', () => {
    const { problem } = mapped({
      conflicts: [
        { ...conflict, teamId: 'team-b' },
        { ...conflict, venueId: 'venue' },
        { ...conflict, otherOfficialId: 'o2' },
      ],
    });
    expect(official(problem, 'o1')).toMatchObject({
      avoidTeams: ['team-b'],
      avoidVenues: ['place'],
      avoidOfficials: ['o2'],
    });
    expect(official(problem, 'o2')).not.toHaveProperty('avoidOfficials');
  });

  it.each([
    ['ended the day before', { until: '2026-11-27' }, false],
    ['ends on the day', { until: '2026-11-28' }, true],
    ['begins on the day', { since: '2026-11-28' }, true],
    ['begins the day after', { since: '2026-11-29' }, false],
  ])('that %s: in force on the day of the game is %s', (_, dates, isInForce) => {
    const { problem } = mapped({ conflicts: [{ ...conflict, ...dates, teamId: 'team-a' }] });
    expect(official(problem, 'o1').avoidTeams).toEqual(isInForce ? ['team-a'] : undefined);
  });
});

describe('time that is taken', () => {
  it('never offers a declined tip-off again, but the next game in the hall', () => {
    const { problem } = mapped({
      declined: [{ officialId: 'o1', startsAt: new Date('2026-11-28T14:00:00Z') }],
    });
    expect(official(problem, 'o1').available).toEqual([
      { from: '2026-11-27T23:00:00.000Z', to: '2026-11-28T14:00:00.000Z' },
      { from: '2026-11-28T14:01:00.000Z', to: '2026-11-29T23:00:00.000Z' },
    ]);
  });

  it('keeps the way and the night free around a duty of another slate', () => {
    const { problem } = mapped({
      officials: [recordedOfficial({ id: 'o1' })],
      elsewhere: [
        {
          officialId: 'o1',
          placeId: 'place',
          localDate: '2026-11-27',
          dutyStartsAt: new Date('2026-11-27T20:00:00Z'),
          dutyEndsAt: new Date('2026-11-27T22:00:00Z'),
        },
      ],
    });
    // Measured by hand: home to hall is 5 + ceil(17 367 m at 50 km/h) = 26 minutes; 22:00 + 26 + 660 + 26 minutes.
    expect(official(problem, 'o1').available).toEqual([
      { from: '2026-11-28T09:52:00.000Z', to: '2026-11-29T23:00:00.000Z' },
    ]);
    expect(official(problem, 'o1').maxGamesPerDay).toBe(1);
  });
});

describe('history', () => {
  const past = (gameId: string, officialId: string, localDate: string) => ({
    gameId,
    officialId,
    localDate,
    homeTeamId: 'team-a',
    awayTeamId: 'team-x',
  });

  it('counts the season, and recent partners and teams that are in this slate', () => {
    const { problem } = mapped({
      past: [
        past('p1', 'o1', '2026-11-21'),
        past('p1', 'o2', '2026-11-21'),
        past('p2', 'o1', '2026-09-01'),
        past('p2', 'gone', '2026-11-21'),
      ],
    });
    expect(official(problem, 'o1')).toMatchObject({
      priorGames: 2,
      recentPartners: { o2: 1 },
      recentTeams: { 'team-a': 1 },
    });
  });
});
