// Goal: what happened is read with all its faults and applied exactly. Method: hand-made events, spoilt ones with the
// expected JSON paths, and problems before and after.
import { applyEvents, readEvents, readProblem, type SlateEvent } from '../../../../src/solver';
import { aGame, anOfficial, aProblem } from '../../../support/solver/slate-builder';

const window = { from: '2026-03-07T08:00:00Z', to: '2026-03-07T20:00:00Z' };
const problem = aProblem({
  officials: [anOfficial('a', { available: [window] }), anOfficial('b')],
  games: [
    aGame('g1', '2026-03-07T10:00:00Z', { published: { chief: 'b', umpire: 'a' } }),
    aGame('g2', '2026-03-07T12:00:00Z'),
  ],
});
const published = [
  { game: 'g1', chief: 'a', umpire: null },
  { game: 'g2', chief: null, umpire: 'b' },
];
const after = (...events: SlateEvent[]) => applyEvents(problem, published, events);

describe('reading', () => {
  const faultsOf = (...events: unknown[]) => {
    const read = readEvents({ format: 'slate-events/1', events }, problem);
    return read.ok ? [] : read.faults.map(({ path }) => path);
  };

  it('accepts every kind, later events naming what earlier ones brought', () => {
    expect(
      faultsOf(
        { kind: 'officialOut', official: 'a', from: window.from },
        { kind: 'placeAdded', place: { id: 'annex', lat: 45, lon: 8 } },
        {
          kind: 'gameAdded',
          game: aGame('g3', '2026-03-07T10:00:00Z', { venue: 'annex', locked: { umpire: null } }),
        },
        { kind: 'gameMoved', game: 'g3', tipOff: '2026-03-07T11:00:00Z', durationMinutes: 60 },
        { kind: 'venueChanged', game: 'g1', venue: 'annex' },
        { kind: 'gameCancelled', game: 'g2' },
        {
          kind: 'limitsChanged',
          official: 'b',
          limits: { maxGames: 0, available: [window], avoidOfficials: ['a'] },
        },
      ),
    ).toEqual([]);
  });

  it('reports all faults with their paths', () => {
    expect(
      faultsOf(
        { kind: 'officialOut', official: 'z', from: 'noon' },
        { kind: 'officialOut', official: 'a', from: window.to, to: window.from },
        { kind: 'gameCancelled', game: 'g1' },
        { kind: 'gameMoved', game: 'g1', tipOff: '2026-03-07T11:00:00Z', durationMinutes: 0 },
        { kind: 'rain' },
        { kind: 'gameAdded', game: { ...aGame('g2', '2026-03-07T10:00:00Z'), priority: 0, published: {} } },
        { kind: 'limitsChanged', official: 'a', limits: { maxGames: 1.5, level: 3, avoidOfficials: ['q'] } },
        { kind: 'venueChanged', game: 'g2' },
        7,
      ),
    ).toEqual([
      'events[0].official',
      'events[0].from',
      'events[1]',
      'events[3].game',
      'events[3].durationMinutes',
      'events[4].kind',
      'events[5].game.published',
      'events[5].game.priority',
      'events[5].game.id',
      'events[6].limits.level',
      'events[6].limits.maxGames',
      'events[6].limits.avoidOfficials[0]',
      'events[7].venue',
      'events[8]',
    ]);
    expect(readEvents({ format: 'x' }, problem)).toMatchObject({
      ok: false,
      faults: [{ path: 'events' }, { path: 'format' }],
    });
  });
});

describe('applying', () => {
  it('publishes the seats of the published slate and nothing that stood there before', () => {
    expect(after().games.map((game) => game.published)).toEqual([{ chief: 'a' }, { umpire: 'b' }]);
    expect(problem.games[0]!.published).toEqual({ chief: 'b', umpire: 'a' });
  });

  it('cuts an absence out of the windows', () => {
    const absent = { kind: 'officialOut', official: 'a' } as const;
    const [from, to] = ['2026-03-07T10:00:00Z', '2026-03-07T12:00:00Z'];
    const windows = (event: SlateEvent) => after(event).officials[0]!.available;
    expect(windows({ ...absent, from, to })).toEqual([
      { from: window.from, to: from },
      { from: to, to: window.to },
    ]);
    expect(windows({ ...absent, from })).toEqual([{ from: window.from, to: from }]);
    expect(windows({ ...absent, from: window.to })).toEqual([window]);
    expect(windows(absent)).toEqual([]);
  });

  it('gives a problem that its reader accepts', () => {
    const changed = after(
      { kind: 'officialOut', official: 'a' },
      { kind: 'gameCancelled', game: 'g1' },
      { kind: 'gameAdded', game: aGame('g3', '2026-03-07T10:00:00Z') },
      { kind: 'limitsChanged', official: 'b', limits: { maxGamesPerDay: 1 } },
    );
    expect(readProblem(changed)).toMatchObject({ ok: true });
    expect(changed.games.map(({ id }) => id)).toEqual(['g2', 'g3']);
    expect(changed.officials[1]!.maxGamesPerDay).toBe(1);
  });
});
