// Goal: the front keeps what nothing beats, keeps coverage, and knows its widest gap. Method: made-up figures.
import { COST_TERMS, tradeOffs, type CostBreakdown } from '../../../../src/solver';
import { AS_WEIGHTED } from '../../../../src/solver/tradeoffs/emphasis';
import { Front, type FrontSlate } from '../../../../src/solver/tradeoffs/front';
import { nextEmphases } from '../../../../src/solver/tradeoffs/next-emphases';
import { aGame, anOfficial, aProblem } from '../../../support/solver/slate-builder';

function slate(
  travel: number,
  pairing: number,
  balance: number,
  own: Partial<CostBreakdown> = {},
): FrontSlate {
  const nothing = Object.fromEntries(COST_TERMS.map((term) => [term, 0])) as Omit<CostBreakdown, 'total'>;
  const total = travel + pairing + balance;
  const cost = { ...nothing, travel, pairing, balance, total, ...own };
  return {
    holders: new Int32Array(),
    cost,
    emphasis: { driving: travel, development: pairing, fairness: 1 },
  };
}

const shown = (slates: readonly FrontSlate[]) =>
  slates.map(({ cost }) => [cost.travel, cost.pairing, cost.balance]);

it('drops what is beaten, from either side, and what leaves more seats open', () => {
  const front = new Front(slate(5, 5, 5));
  front.add(slate(1, 20, 9));
  front.add(slate(2, 20, 9));
  front.add(slate(1, 20, 8));
  front.add(slate(1, 20, 8));
  front.add(slate(0, 30, 0, { open: 1 }));
  expect(shown(front.all())).toEqual([
    [5, 5, 5],
    [1, 20, 8],
  ]);
});

it('a cheaper slate becomes the base; one that beats it at the expense of other terms is no proposal', () => {
  const front = new Front(slate(5, 5, 5));
  front.add(slate(9, 9, 1));
  front.add(slate(4, 4, 4, { total: 50, teamRepeat: 38 }));
  expect(shown(front.all())[0]).toEqual([5, 5, 5]);
  front.add(slate(4, 4, 4.5));
  expect(shown(front.all())).toEqual([
    [4, 4, 4.5],
    [9, 9, 1],
  ]);
  expect(front.all()[0]!.emphasis).toEqual(AS_WEIGHTED);
});

it('searches the corners first, then halfway across the widest gap', () => {
  const front = new Front(slate(10, 10, 1));
  front.add(slate(9, 90, 1));
  front.add(slate(40, 9, 1));
  expect(nextEmphases(front, 0, 2).map(({ driving }) => driving)).toEqual([4, 0.5]);
  expect(nextEmphases(front, 3, 1)).toEqual([{ driving: Math.sqrt(90), development: 30, fairness: 1 }]);
});

it('spreads a choice over the front, the base among it', () => {
  const front = new Front(slate(50, 40, 1, { total: 0 }));
  for (const travel of [0, 1, 2, 99, 100]) front.add(slate(travel, 100 - travel, 1));
  expect(shown(front.spread(3)).map(([travel]) => travel)).toEqual([50, 0, 100]);
});

it('says which locks are illegal', async () => {
  const games = ['g1', 'g2'].map((id) => aGame(id, '2026-03-07T10:00:00Z', { locked: { chief: 'a' } }));
  const problem = aProblem({ officials: [anOfficial('a')], games });
  const found = await tradeOffs(problem, { nowSeconds: () => 0, steps: 10 });
  expect(found).toMatchObject({ ok: false, lockViolations: [{ rule: 'H3' }] });
});
