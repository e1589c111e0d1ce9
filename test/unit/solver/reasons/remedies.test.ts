// Goal: remedies fill the seat, the smallest come first, and conflicts are never among them. Method: one hand-made slate
// for each kind of change; every remedy is applied, read, and its slate judged and priced by the checker.
import {
  applyRemedy,
  checkAnswer,
  findRemedies,
  presentSlate,
  priceSlate,
  readProblem,
  type Assignment,
  type Remedy,
  type SlateProblem,
} from '../../../../src/solver';
import { writeAnswer } from '../../../../src/solver/solve/write-answer';
import { aGame, anOfficial, aProblem, HALL } from '../../../support/solver/slate-builder';

const STEPS = 4096;
const game = aGame('g', '2026-03-07T12:00:00+01:00');
const umpire = anOfficial('umpire', { mayBeChief: false, level: 1 });

/** Remedies for the chief seat of game `g`, each verified anew. */
function remediesOf(problem: SlateProblem, assignments: readonly Assignment[] = []): readonly Remedy[] {
  const present = presentSlate(problem, assignments);
  const seat = 2 * present.slate.gameIds.indexOf('g');
  const before = priceSlate(present.slate, present.holders);
  const remedies = findRemedies(present, seat, { steps: STEPS });
  for (const remedy of remedies) {
    const changed = applyRemedy(problem, remedy.change);
    expect(readProblem(changed).ok).toBe(true);
    const { slate, holders } = presentSlate(changed, remedy.assignments);
    const report = checkAnswer(changed, writeAnswer(changed, slate, holders, { bound: null, seconds: 0 }));
    expect(report.ok).toBe(true);
    expect(report.seats?.open).toBe(remedy.openSeats);
    expect(report.cost!.total - before.total).toBeCloseTo(remedy.costChange.total, 6);
    expect(remedy.assignments.find(({ game: id }) => id === 'g')?.chief).toBe(remedy.filledBy);
    expect(remedy.moves[0]).toEqual({ game: 'g', seat: 'chief', from: null, to: remedy.filledBy });
  }
  return remedies;
}

const weights = { openSeat: 1000, travelPerKm: 1 };
const crew = (id: string, chief: string | null, second: string | null): Assignment => ({
  game: id,
  chief,
  umpire: second,
});

it('asks somebody to be free a little longer', () => {
  // The duty is 11:40 to 13:25; `late` comes at 11:52, `early` leaves at 13:00.
  const officials = [
    umpire,
    anOfficial('late', {
      available: [{ from: '2026-03-07T11:52:00+01:00', to: '2026-03-07T20:00:00+01:00' }],
    }),
    anOfficial('early', {
      available: [{ from: '2026-03-07T06:00:00+01:00', to: '2026-03-07T13:00:00+01:00' }],
    }),
  ];
  const remedies = remediesOf(aProblem({ games: [game], officials, weights }), [crew('g', null, 'umpire')]);
  expect(remedies.map(({ change }) => change)).toMatchObject([
    { kind: 'availability', official: 'late', moreMinutes: 12 },
    // Fifteen minutes later and `late` is there in time; half an hour earlier and `early` can stay to the end.
    { kind: 'tip-off', byMinutes: 15 },
    { kind: 'availability', official: 'early', moreMinutes: 25 },
    { kind: 'tip-off', byMinutes: -25 },
  ]);
  expect(remedies.every(({ needsApproval }) => !needsApproval)).toBe(true);
});

it('asks for one more game', () => {
  const games = [game, aGame('h', '2026-03-07T15:00:00+01:00')];
  const officials = [umpire, anOfficial('busy', { maxGames: 1 })];
  const problem = aProblem({ games, officials, weights });
  const remedies = remediesOf(problem, [crew('g', null, 'umpire'), crew('h', 'busy', 'umpire')]);
  expect(remedies).toMatchObject([
    { change: { kind: 'load', official: 'busy', maxGamesPerDay: 9, maxGames: 2 }, openSeats: 0 },
  ]);
});

it('asks for a longer way', () => {
  const far = { id: 'far', lat: 45, lon: 8.2 };
  const legs = [{ from: 'far', to: 'hall', minutes: 33, metres: 20_000 }];
  const problem = aProblem({
    games: [game],
    officials: [umpire, anOfficial('far', { home: 'far', maxHomeMinutes: 30 })],
    weights,
    own: { places: [HALL, far], travel: { circuity: 1.3, speedKmh: 60, fixedMinutes: 4, legs } },
  });
  expect(remediesOf(problem, [crew('g', null, 'umpire')])).toMatchObject([
    {
      change: { kind: 'reach', official: 'far', maxHomeMinutes: 33, moreMinutes: 3 },
      costChange: { total: -958, open: -1000, pairing: 2, travel: 40 },
    },
  ]);
});

it('moves the tip-off as little as it can', () => {
  const games = [game, aGame('h', '2026-03-07T13:00:00+01:00')];
  const officials = [umpire, anOfficial('umpire 2', { mayBeChief: false, level: 1 }), anOfficial('chief')];
  const present = [crew('g', null, 'umpire'), crew('h', 'chief', 'umpire 2')];
  const remedies = remediesOf(aProblem({ games, officials, weights }), present);
  // Game `h` tips off at 13:00, five minutes after a game that began at 11:40 and lasts 75 minutes.
  expect(remedies).toMatchObject([
    { change: { kind: 'tip-off', game: 'g', byMinutes: -20 }, filledBy: 'chief' },
  ]);
});

it('sets a wish aside only where it alone keeps the seat open', () => {
  const reluctant = [{ from: '2026-03-07T10:00:00+01:00', to: '2026-03-07T16:00:00+01:00' }];
  const officials = [umpire, anOfficial('chief', { reluctant })];
  const strong = { openSeat: 100, reluctant: 500 };
  const present = [crew('g', null, 'umpire')];
  expect(remediesOf(aProblem({ games: [game], officials, weights: strong }), present)).toMatchObject([
    {
      change: { kind: 'wish', official: 'chief', game: 'g' },
      costChange: { total: -98, pairing: 2, reluctant: 0 },
    },
  ]);
  const weak = { openSeat: 100, reluctant: 50 };
  expect(remediesOf(aProblem({ games: [game], officials, weights: weak }), present)).toMatchObject([
    { change: { kind: 'search' }, costChange: { total: -48 } },
  ]);
});

it('offers a level exception last, for approval, and to nobody else', () => {
  const strict = {
    id: 'open',
    chiefMinLevel: 3,
    umpireMinLevel: 1,
    chiefTargetLevel: 3,
    umpireTargetLevel: 2,
    pairingCost: [0],
  };
  const officials = [
    umpire,
    anOfficial('junior', { level: 2 }),
    anOfficial('beginner', { level: 0, mayBeChief: true }),
    anOfficial('away', {
      available: [{ from: '2026-03-07T11:55:00+01:00', to: '2026-03-07T20:00:00+01:00' }],
    }),
  ];
  const problem = aProblem({ games: [game], officials, weights, own: { divisions: [strict] } });
  const remedies = remediesOf(problem, [crew('g', null, 'umpire')]);
  expect(remedies.map(({ change, needsApproval }) => [change.kind, needsApproval])).toEqual([
    ['availability', false],
    ['tip-off', false],
    ['level', true],
  ]);
  expect(remedies.at(-1)).toMatchObject({
    change: { official: 'junior', level: 2, minLevel: 3 },
    filledBy: 'junior',
  });
});

it('finds the change elsewhere that frees somebody', () => {
  // `chief` is the only one for game g and works h at the same time; `other` could work h, were it three minutes nearer.
  const near = { id: 'near', lat: 45, lon: 8.1 };
  const home = { id: 'home', lat: 45, lon: 8.2 };
  const legs = [
    { from: 'home', to: 'near', minutes: 33, metres: 9000 },
    { from: 'home', to: 'hall', minutes: 200, metres: 9000 },
  ];
  const games = [game, aGame('h', game.tipOff, { venue: 'near' })];
  const officials = [
    umpire,
    anOfficial('umpire 2', { mayBeChief: false, level: 1 }),
    anOfficial('chief'),
    anOfficial('other', { home: 'home', maxHomeMinutes: 30 }),
  ];
  const problem = aProblem({
    games,
    officials,
    weights,
    own: { places: [HALL, near, home], travel: { circuity: 1.3, speedKmh: 60, fixedMinutes: 4, legs } },
  });
  const remedies = remediesOf(problem, [crew('g', null, 'umpire'), crew('h', 'chief', 'umpire 2')]);
  expect(remedies[0]).toMatchObject({
    change: { kind: 'reach', official: 'other', moreMinutes: 3 },
    filledBy: 'chief',
    moves: [
      { game: 'g', seat: 'chief', from: null, to: 'chief' },
      { game: 'h', seat: 'chief', from: 'chief', to: 'other' },
    ],
  });
});

it('never waives a conflict, a lock or rest', () => {
  const officials = [
    umpire,
    anOfficial('torn', { avoidTeams: ['home of g'] }),
    anOfficial('barred', { avoidVenues: ['hall'] }),
    anOfficial('averse', { avoidOfficials: ['umpire'] }),
  ];
  const games = [{ ...game, locked: { umpire: 'umpire' } }];
  expect(remediesOf(aProblem({ games, officials, weights }), [crew('g', null, 'umpire')])).toEqual([]);
});
