// Goal: each kind of repair, on a slate made so that it is the best there is. Method: hand-made slates of a few games
// in one hall, where who may do what is ruled by teams to avoid and by who may be chief; the expected calls are
// worked out by hand.
import {
  repairSlate,
  type Assignment,
  type Official,
  type RepairReport,
  type SlateEvent,
  type SlateProblem,
} from '../../../../src/solver';
import { aGame, anOfficial, aProblem, HALL } from '../../../support/solver/slate-builder';

const weights = { openSeat: 1000, change: 10, travelPerKm: 1, balance: 1 };

function crew(game: string, chief: string | null, umpire: string | null): Assignment {
  return { game, chief, umpire };
}

/** May work the games named, in either seat unless they are no chief; nothing else. */
function only(
  id: string,
  games: readonly string[],
  of: readonly string[],
  own: Partial<Official> = {},
): Official {
  return anOfficial(id, {
    avoidTeams: of.filter((g) => !games.includes(g)).map((g) => `home of ${g}`),
    ...own,
  });
}

async function repaired(
  problem: SlateProblem,
  published: readonly Assignment[],
  ...events: SlateEvent[]
): Promise<RepairReport> {
  const outcome = await repairSlate(problem, published, events, { anewSteps: 4096 });
  if (!outcome.ok) throw new Error('the locks are illegal');
  return outcome;
}

const out = (official: string): SlateEvent => ({ kind: 'officialOut', official });
const seat = (game: string, name: 'chief' | 'umpire') => ({ game, seat: name });
/** Three games at one instant: nobody can work two of them. */
const atOnce = ['g1', 'g2', 'g3'].map((id) => aGame(id, '2026-03-07T10:00:00Z'));

describe('kinds of repair', () => {
  it('a stand-in alone', async () => {
    const officials = [anOfficial('a'), anOfficial('b'), anOfficial('c')];
    const problem = aProblem({ officials, games: atOnce.slice(0, 1), weights });
    const report = await repaired(problem, [crew('g1', 'a', 'b')], out('a'));
    expect(report.brokenSeats).toEqual([
      { ...seat('g1', 'chief'), official: 'a', reasons: [expect.stringMatching(/not available/)] },
    ]);
    expect(report.alternatives[0]).toMatchObject({
      kind: 'standIn',
      people: ['c'],
      calls: [{ official: 'c', leaves: null, takes: seat('g1', 'chief') }],
      openSeats: [],
    });
    expect(report.fewest).toEqual({ openedSeats: 0, people: 1, isProven: true });
    // One change for 10; c is one game above a target of 0 and a is back to it.
    expect(report.alternatives[0]!.costChange).toMatchObject({ total: 10, change: 10, balance: 0, open: 0 });
  });

  it('a swap within the crew', async () => {
    const officials = [anOfficial('a'), anOfficial('b'), anOfficial('c', { mayBeChief: false })];
    const problem = aProblem({ officials, games: atOnce.slice(0, 1), weights });
    const report = await repaired(problem, [crew('g1', 'a', 'b')], out('a'));
    expect(report.alternatives[0]).toMatchObject({
      kind: 'crewSwap',
      people: ['b', 'c'],
      calls: [
        { official: 'b', leaves: seat('g1', 'umpire'), takes: seat('g1', 'chief') },
        { official: 'c', leaves: null, takes: seat('g1', 'umpire') },
      ],
    });
    expect(report.fewest).toMatchObject({ people: 2, isProven: true });
  });

  it('a chain of three', async () => {
    const all = ['g1', 'g2', 'g3'];
    const noChief = { mayBeChief: false };
    const officials = [
      anOfficial('a'),
      only('b', ['g1', 'g2'], all),
      only('c', ['g2', 'g3'], all),
      only('d', ['g3'], all),
      only('u1', ['g1'], all, noChief),
      only('u2', ['g2'], all, noChief),
      only('u3', ['g3'], all, noChief),
    ];
    const problem = aProblem({ officials, games: atOnce, weights });
    const published = [crew('g1', 'a', 'u1'), crew('g2', 'b', 'u2'), crew('g3', 'c', 'u3')];
    const report = await repaired(problem, published, out('a'));
    expect(report.alternatives[0]).toMatchObject({
      kind: 'chain',
      people: ['b', 'c', 'd'],
      calls: [
        { official: 'b', leaves: seat('g2', 'chief'), takes: seat('g1', 'chief') },
        { official: 'c', leaves: seat('g3', 'chief'), takes: seat('g2', 'chief') },
        { official: 'd', leaves: null, takes: seat('g3', 'chief') },
      ],
    });
    expect(report.fewest).toEqual({ openedSeats: 0, people: 3, isProven: true });
    expect(report.alternatives.at(-1)).toMatchObject({
      kind: 'openSeat',
      people: [],
      openSeats: [seat('g1', 'chief')],
    });
  });

  it('a seat left open when nobody can come, and the minor beside it goes home', async () => {
    const officials = [anOfficial('a'), anOfficial('b', { minor: true, mayBeChief: false })];
    const problem = aProblem({ officials, games: atOnce.slice(0, 1), weights });
    const report = await repaired(problem, [crew('g1', 'a', 'b')], out('a'));
    expect(report.alternatives).toHaveLength(1);
    expect(report.alternatives[0]).toMatchObject({
      kind: 'openSeat',
      people: ['b'],
      calls: [{ official: 'b', leaves: seat('g1', 'umpire'), takes: null }],
      openSeats: [seat('g1', 'chief'), seat('g1', 'umpire')],
    });
    expect(report.fewest).toEqual({ openedSeats: 2, people: 1, isProven: true });
  });

  it('several broken seats at once, by one stand-in', async () => {
    const games = ['g1', 'g2'].map((id, i) => aGame(id, `2026-03-07T1${2 * i}:00:00Z`));
    const officials = ['a', 'b', 'c', 'd'].map((id) => anOfficial(id, { maxGames: id === 'c' ? 1 : 4 }));
    const problem = aProblem({ officials, games, weights });
    const report = await repaired(problem, [crew('g1', 'a', 'b'), crew('g2', 'a', 'b')], out('a'));
    expect(report.alternatives[0]).toMatchObject({ kind: 'standIn', people: ['d'] });
    expect(report.alternatives[0]!.calls).toHaveLength(2);
    expect(report.alternatives.some(({ people }) => people.join() === 'c,d')).toBe(true);
  });
});

describe('what happened', () => {
  const officials = ['a', 'b', 'c'].map((id) => anOfficial(id));
  const later = aGame('g2', '2026-03-07T14:00:00Z');
  const games = [atOnce[0]!, later];
  const published = [crew('g1', 'a', 'b'), crew('g2', 'a', 'b')];

  it('nothing, as far as rules go', async () => {
    const problem = aProblem({ officials, games, weights });
    const moved: SlateEvent = { kind: 'gameMoved', game: 'g2', tipOff: '2026-03-07T16:00:00Z' };
    const report = await repaired(problem, published, moved);
    expect(report).toMatchObject({
      brokenSeats: [],
      clashes: [],
      alternatives: [],
      fewest: null,
      anew: null,
    });
    expect(report.problem.games[1]).toMatchObject({
      tipOff: '2026-03-07T16:00:00Z',
      published: { chief: 'a', umpire: 'b' },
    });
  });

  it('a game moved onto another one: one of the two seats of each official changes', async () => {
    const problem = aProblem({ officials: [...officials, anOfficial('d')], games, weights });
    const moved: SlateEvent = { kind: 'gameMoved', game: 'g2', tipOff: '2026-03-07T10:30:00Z' };
    const report = await repaired(problem, published, moved);
    expect(report.clashes.map(({ rule }) => rule)).toEqual(['H3', 'H3']);
    expect(report.fewest).toEqual({ openedSeats: 0, people: 4, isProven: true });
    expect(report.alternatives[0]!.people).toEqual(['a', 'b', 'c', 'd']);
  });

  it('a game added, another cancelled', async () => {
    const problem = aProblem({ officials, games, weights });
    const added: SlateEvent = { kind: 'gameAdded', game: aGame('g9', '2026-03-07T10:00:00Z') };
    const report = await repaired(problem, published, { kind: 'gameCancelled', game: 'g1' }, added);
    expect(report.brokenSeats).toEqual([
      { ...seat('g9', 'chief'), official: null, reasons: [] },
      { ...seat('g9', 'umpire'), official: null, reasons: [] },
    ]);
    expect(report.fewest).toMatchObject({ openedSeats: 0, people: 2, isProven: true });
    expect(report.alternatives[0]!.costChange.open).toBe(-2000);
    expect(report.alternatives[0]!.assignments.map(({ game }) => game)).toEqual(['g2', 'g9']);
  });

  it('a venue out of reach, in a place that is new', async () => {
    const near = anOfficial('c', { home: 'far' });
    const short = { maxHomeMinutes: 30 };
    const problem = aProblem({
      officials: [anOfficial('a', short), anOfficial('b'), near],
      games: games.slice(0, 1),
      weights,
      own: { places: [HALL, { id: 'far', lat: 46, lon: 8 }] },
    });
    const place = { id: 'annex', lat: 46, lon: 8.001 };
    const report = await repaired(
      problem,
      published.slice(0, 1),
      { kind: 'placeAdded', place },
      { kind: 'venueChanged', game: 'g1', venue: 'annex' },
    );
    expect(report.brokenSeats).toMatchObject([
      { official: 'a', reasons: [expect.stringMatching(/from home/)] },
    ]);
    // The former holder did not withdraw and has to be told.
    expect(report.alternatives[0]).toMatchObject({ kind: 'standIn', people: ['a', 'c'] });
  });

  it('a limit changed: either seat may be given up', async () => {
    const problem = aProblem({ officials, games, weights });
    const limited: SlateEvent = { kind: 'limitsChanged', official: 'a', limits: { maxGames: 1 } };
    const report = await repaired(problem, published, limited);
    expect(report.clashes).toMatchObject([{ rule: 'H4', officials: ['a'] }]);
    const standIns = report.alternatives.filter(({ kind }) => kind === 'standIn');
    const gaveUp = standIns.flatMap(({ calls }) => calls.map(({ leaves }) => leaves?.game));
    expect(new Set(gaveUp)).toEqual(new Set([undefined, 'g1', 'g2']));
  });

  it.each(['g1', 'g2'])('a limit changed, and somebody else only for %s', async (game) => {
    const third = only('c', [game], ['g1', 'g2'], { mayBeChief: true });
    const problem = aProblem({ officials: [...officials.slice(0, 2), third], games, weights });
    const limited: SlateEvent = { kind: 'limitsChanged', official: 'a', limits: { maxGames: 1 } };
    const report = await repaired(problem, published, limited);
    expect(report.fewest).toEqual({ openedSeats: 0, people: 2, isProven: true });
    expect(report.alternatives[0]).toMatchObject({
      kind: 'standIn',
      calls: [
        { official: 'c', leaves: null, takes: seat(game, 'chief') },
        { official: 'a', leaves: seat(game, 'chief'), takes: null },
      ],
    });
  });

  it('a lock whose official withdrew is let go; the others stay', async () => {
    const locked = { ...games[0]!, locked: { chief: 'a', umpire: 'b' } };
    const problem = aProblem({ officials, games: [locked], weights });
    const report = await repaired(problem, published.slice(0, 1), out('a'));
    expect(report.releasedLocks).toEqual([seat('g1', 'chief')]);
    expect(report.problem.games[0]!.locked).toEqual({ umpire: 'b' });
    expect(report.alternatives[0]).toMatchObject({ people: ['c'] });
  });

  it('a middle game cancelled where the way round it is the only one in time', async () => {
    const places = ['v1', 'v2', 'v3'].map((id) => ({ id, lat: 45, lon: 8 }));
    // Ten hours between v1 and v3, a minute from either to v2.
    const legs = [
      { from: 'v1', to: 'v3', minutes: 600, metres: 1000 },
      { from: 'v1', to: 'v2', minutes: 1, metres: 1000 },
      { from: 'v2', to: 'v3', minutes: 1, metres: 1000 },
    ];
    const tour = [
      aGame('g1', '2026-03-07T08:00:00Z', { venue: 'v1' }),
      aGame('g2', '2026-03-07T11:00:00Z', { venue: 'v2' }),
      aGame('g3', '2026-03-07T14:00:00Z', { venue: 'v3' }),
      aGame('g4', '2026-03-07T11:00:00Z', { venue: 'v2' }),
    ];
    const all = tour.map(({ id }) => id);
    const noChief = { mayBeChief: false };
    const problem = aProblem({
      officials: [anOfficial('a'), only('x', ['g4'], all), only('u', ['g1'], all, noChief)],
      games: tour,
      weights,
      own: { places: [HALL, ...places], travel: { circuity: 1.3, speedKmh: 60, fixedMinutes: 4, legs } },
    });
    const crews = [crew('g1', 'a', 'u'), crew('g2', 'a', null), crew('g3', 'a', null), crew('g4', 'x', null)];
    const report = await repaired(problem, crews, { kind: 'gameCancelled', game: 'g2' });
    expect(report.clashes).toMatchObject([{ rule: 'H3', officials: ['a'] }]);
    // With g4 on the way a comes in time again: its umpire's seat was open, and the chief's is x's.
    expect(report.alternatives[0]).toMatchObject({
      people: ['a'],
      calls: [{ official: 'a', leaves: null, takes: seat('g4', 'umpire') }],
    });
    expect(report.fewest).toEqual({ openedSeats: 0, people: 1, isProven: true });
    expect(report.alternatives.some(({ people }) => people.join() === 'a,x')).toBe(true);
  });

  it('locks that can no longer stand together are refused', async () => {
    const locked = games.map((game) => ({ ...game, locked: { chief: 'a' } }));
    const problem = aProblem({ officials, games: locked, weights });
    const moved: SlateEvent = { kind: 'gameMoved', game: 'g2', tipOff: '2026-03-07T10:30:00Z' };
    expect(await repairSlate(problem, published, [moved])).toMatchObject({
      ok: false,
      lockViolations: [{ rule: 'H3' }],
    });
  });
});

it('stops when asked to and reports what it has', async () => {
  const officials = ['a', 'b', 'c'].map((id) => anOfficial(id));
  const problem = aProblem({ officials, games: atOnce.slice(0, 1), weights });
  const signal = AbortSignal.abort();
  const outcome = await repairSlate(problem, [crew('g1', 'a', 'b')], [out('a')], { signal });
  expect(outcome).toMatchObject({ ok: true, brokenSeats: [{ official: 'a' }] });
  const late = await repairSlate(problem, [crew('g1', 'a', 'b')], [out('a')], {
    clock: { nowSeconds: () => 5, seconds: 0 },
  });
  expect(late).toMatchObject({ ok: true, fewest: null });
});
