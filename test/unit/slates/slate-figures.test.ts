// Goal: figures for people follow from the answer alone. Method: answers written by hand.
import { slateFigures } from '../../../src/slates/slate-figures';
import { mapSlateProblem } from '../../../src/slates/slate-problem-mapping';
import { COST_TERMS, type CostBreakdown, type SlateAnswer } from '../../../src/solver';
import { slateRecords } from './slate-records.builder';

const { problem } = mapSlateProblem(
  slateRecords({ seats: [{ gameId: 'g1', seat: 'umpire', officialId: null, locked: true }] }),
);
const cost = (terms: Partial<CostBreakdown>): CostBreakdown => {
  const all = { ...Object.fromEntries(COST_TERMS.map((term) => [term, 0])), ...terms };
  return { total: Object.values(all).reduce((sum, amount) => sum + amount, 0), ...all } as CostBreakdown;
};
const answer = (overrides: Partial<SlateAnswer>): SlateAnswer => ({
  format: 'slate-answer/1',
  problem: problem.name,
  assignments: [{ game: 'g1', chief: 'o1', umpire: null }],
  cost: cost({ travel: 20, balance: 30 }),
  bound: null,
  seconds: 1,
  status: 'feasible',
  ...overrides,
});

test('seats kept open on purpose are not counted as open', () => {
  expect(slateFigures(problem, answer({}))).toMatchObject({
    games: 1,
    seatsFilled: 1,
    seatsOpen: 0,
    seatsKeptOpen: 1,
  });
});

test('the proven gap is measured against the cost without open seats', () => {
  const figures = slateFigures(
    problem,
    answer({ cost: cost({ open: 10_000, travel: 40, balance: 60 }), bound: 10_095 }),
  );
  expect(figures.qualityCost).toBe(100);
  expect(figures.gap).toEqual({ cost: 5, ofQuality: 0.05 });
});

test('without a bound there is no gap, and a bound that meets the total leaves none', () => {
  expect(slateFigures(problem, answer({})).gap).toBeNull();
  expect(slateFigures(problem, answer({ bound: 50 })).gap).toEqual({ cost: 0, ofQuality: 0 });
});

test('kilometres come from the driving cost, and are unknown where driving costs nothing', () => {
  // The default weight is 0.4 a kilometre.
  expect(slateFigures(problem, answer({})).kilometres).toBeCloseTo(50);
  const policy = { ...problem.policy, weights: { ...problem.policy.weights, travelPerKm: 0 } };
  expect(slateFigures({ ...problem, policy }, answer({})).kilometres).toBeNull();
});
