// Goal: each cost term alone, priced by hand. Method: a slate of one or two games with one weight set; terms and
// independent checker have to give the figure worked out in the test.
import {
  checkAnswer,
  compileSlate,
  NOBODY,
  priceSlate,
  type CostTerm,
  type SlateProblem,
} from '../../../src/solver';
import { writeAnswer } from '../../../src/solver/solve/write-answer';
import { aGame, anOfficial, aProblem, HALL } from '../../support/solver/slate-builder';

function expectCost(
  problem: SlateProblem,
  crews: readonly (readonly [string | null, string | null])[],
  term: CostTerm,
  amount: number,
): void {
  const slate = compileSlate(problem);
  const holders = Int32Array.from(crews.flat(), (id) =>
    id === null ? NOBODY : slate.officialIds.indexOf(id),
  );
  const cost = priceSlate(slate, holders);
  expect(cost[term]).toBeCloseTo(amount, 9);
  expect(cost.total).toBeCloseTo(amount, 9);
  const report = checkAnswer(problem, writeAnswer(problem, slate, holders, { bound: null, seconds: 0 }));
  expect(report.violations).toEqual([]);
  expect(report.cost?.[term]).toBeCloseTo(amount, 9);
}

const game = aGame('g', '2026-03-07T09:00:00+01:00');
const later = aGame('h', '2026-03-07T11:00:00+01:00');

it('open: each open seat by its priority, but not one kept open on purpose', () => {
  const games = [
    aGame('g', game.tipOff, { priority: 2.5 }),
    aGame('h', later.tipOff, { locked: { umpire: null } }),
  ];
  const problem = aProblem({ games, officials: [anOfficial('a')], weights: { openSeat: 100 } });
  expectCost(
    problem,
    [
      ['a', null],
      ['a', null],
    ],
    'open',
    250,
  );
});

it('pairing: by level gap, beyond the table its last entry', () => {
  const officials = [
    anOfficial('one', { level: 1 }),
    anOfficial('uno', { level: 1 }),
    anOfficial('two', { level: 2 }),
    anOfficial('six', { level: 6 }),
  ];
  const problem = aProblem({ games: [game], officials });
  expectCost(problem, [['one', 'uno']], 'pairing', 6);
  expectCost(problem, [['six', 'one']], 'pairing', 2);
  expectCost(problem, [[null, 'one']], 'pairing', 0);
});

it('travel: a tour from home over its games and home again', () => {
  const places = [HALL, { id: 'a', lat: 45.1, lon: 8 }, { id: 'b', lat: 45.2, lon: 8 }];
  const legs = [
    { from: 'hall', to: 'a', minutes: 1, metres: 10_000 },
    { from: 'a', to: 'b', minutes: 1, metres: 3_000 },
    { from: 'b', to: 'hall', minutes: 1, metres: 12_500 },
  ];
  const games = [aGame('g', game.tipOff, { venue: 'a' }), aGame('h', later.tipOff, { venue: 'b' })];
  const travel = { circuity: 1.3, speedKmh: 60, fixedMinutes: 4, legs };
  const problem = aProblem({
    games,
    officials: [anOfficial('o')],
    weights: { travelPerKm: 2 },
    own: { places, travel },
  });
  expectCost(
    problem,
    [
      ['o', null],
      ['o', null],
    ],
    'travel',
    2 * 25.5,
  );
  expectCost(
    problem,
    [
      ['o', null],
      [null, null],
    ],
    'travel',
    2 * 20,
  );
});

it('balance: squared distance from the target, also without a game', () => {
  const officials = [
    anOfficial('a', { priorGames: 3, targetGames: 4.5 }),
    anOfficial('b', { priorGames: 1, targetGames: 3 }),
  ];
  const problem = aProblem({ games: [game], officials, weights: { balance: 8 } });
  expectCost(problem, [['a', null]], 'balance', 8 * (0.25 + 4));
});

it('teamRepeat: both teams, for every filled seat, names like those of objects included', () => {
  const recentTeams = JSON.parse('{"__proto__": 2, "constructor": 1}') as Record<string, number>;
  const teams = { home: '__proto__', away: 'constructor' };
  const officials = [anOfficial('a', { recentTeams }), anOfficial('b')];
  const problem = aProblem({
    games: [aGame('g', game.tipOff, teams)],
    officials,
    weights: { teamRepeat: 15 },
  });
  expectCost(
    { ...problem, divisions: [{ ...problem.divisions[0]!, pairingCost: [0] }] },
    [['a', 'b']],
    'teamRepeat',
    45,
  );
});

it('partnerRepeat: the larger of the two figures', () => {
  const officials = [
    anOfficial('a', { recentPartners: { b: 1 } }),
    anOfficial('b', { recentPartners: { a: 3 } }),
  ];
  const problem = aProblem({ games: [game], officials, weights: { partnerRepeat: 10 } });
  expectCost(
    { ...problem, divisions: [{ ...problem.divisions[0]!, pairingCost: [0] }] },
    [['b', 'a']],
    'partnerRepeat',
    30,
  );
});

it('overLevel: levels above the target of the seat, never below', () => {
  const officials = [anOfficial('five', { level: 5 }), anOfficial('one', { level: 1 })];
  const problem = aProblem({ games: [game], officials, weights: { overLevel: 12 } });
  expectCost(
    { ...problem, divisions: [{ ...problem.divisions[0]!, pairingCost: [0] }] },
    [['five', 'one']],
    'overLevel',
    24,
  );
});

it('reluctant: once for each seat, and only for a real overlap', () => {
  // Duty of g: 08:40 to 10:25.
  const reluctant = (from: string, to: string) => [
    { from: `2026-03-07T${from}:00+01:00`, to: `2026-03-07T${to}:00+01:00` },
  ];
  const problem = (windows: ReturnType<typeof reluctant>) =>
    aProblem({
      games: [game],
      officials: [anOfficial('a', { reluctant: windows })],
      weights: { reluctant: 25 },
    });
  expectCost(
    problem([...reluctant('10:24', '11:00'), ...reluctant('08:00', '09:00')]),
    [['a', null]],
    'reluctant',
    25,
  );
  expectCost(problem(reluctant('10:25', '11:00')), [['a', null]], 'reluctant', 0);
});

it('change: every published seat that its official no longer holds', () => {
  const games = [aGame('g', game.tipOff, { published: { chief: 'a', umpire: 'b' } })];
  const problem = aProblem({
    games,
    officials: [anOfficial('a', { level: 4 }), anOfficial('b')],
    weights: { change: 60 },
  });
  expectCost(problem, [['a', 'b']], 'change', 0);
  expectCost(problem, [['a', null]], 'change', 60);
  expectCost(
    { ...problem, divisions: [{ ...problem.divisions[0]!, pairingCost: [0] }] },
    [[null, 'a']],
    'change',
    120,
  );
});
