// Goal: two who should not meet pay for meeting, and only for that, whatever has been fined beforehand; two who must
// not meet do not. Method: HiGHS on the model of one game and two officials, with multipliers set by hand.
import startHighs, { type Highs } from 'highs';
import { compileSlate, type Official } from '../../../../src/solver';
import { Lagrangian } from '../../../../src/solver/bound/lagrangian';
import { proveOptimum } from '../../../../src/solver/exact/prove-optimum';
import { aGame, anOfficial, aProblem } from '../../../support/solver/slate-builder';

let highs: Highs;
beforeAll(async () => {
  highs = await startHighs();
});

/** Optimum with two officials for one game whose open seats cost 100 each, from this multiplier of their row. */
function optimum(own: Partial<Official>, multiplier: number): number {
  const slate = compileSlate(
    aProblem({
      officials: [anOfficial('a', own), anOfficial('b')],
      games: [aGame('g', '2026-03-07T09:00:00Z')],
      weights: { openSeat: 100, partnerRepeat: 10 },
    }),
  );
  const lagrangian = new Lagrangian(slate);
  expect(lagrangian.partners.count).toBe(1);
  const prices = new Float64Array(lagrangian.priceCount);
  prices[lagrangian.seatPriceCount] = multiplier;
  let best = { holders: new Int32Array([-1, -1]), cost: 200 };
  const outcome = proveOptimum(lagrangian, prices, {
    highs,
    best: () => best,
    isOver: () => false,
    onBound: () => undefined,
    onSlate: (holders, cost) => (best = { holders: Int32Array.from(holders), cost }),
  });
  expect(outcome).toEqual({ kind: 'proven' });
  return best.cost;
}

it.each([0, 7, 30])('recent partners meet at their price of 30 (multiplier %d)', (multiplier) => {
  // Both at level 3: a pairing of 6 and three games together.
  expect(optimum({ recentPartners: { b: 3 } }, multiplier)).toBe(6 + 30);
});

it.each([0, 7, 400])('partners who avoid each other leave a seat open (multiplier %d)', (multiplier) => {
  expect(optimum({ avoidOfficials: ['b'] }, multiplier)).toBe(100);
});

it.each([0, 30, 240])('a price above that of an open seat is not paid (multiplier %d)', (multiplier) => {
  expect(optimum({ recentPartners: { b: 24 } }, multiplier)).toBe(100);
});
