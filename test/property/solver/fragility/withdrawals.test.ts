// Goal: what a withdrawal costs is the truth, and what is called proven is. Method: tiny slates without each official in
// turn, by brute force over all slates; the bound never above it.
import startHighs, { type Highs } from 'highs';
import { compileSlate, type PresentSlate } from '../../../../src/solver';
import { NOBODY } from '../../../../src/solver/compile/facts';
import { solveWithdrawals } from '../../../../src/solver/fragility/solve-withdrawals';
import { withdrawalBounds } from '../../../../src/solver/fragility/withdrawal-bounds';
import { withoutOfficial } from '../../../../src/solver/reasons/changed-problem';
import { solveAgain } from '../../../../src/solver/reasons/solve-again';
import { bruteForce } from '../../../support/solver/brute-force';
import { randomSlate } from '../../../support/solver/random-slate';

const seen = { withdrawals: 0, open: 0, proven: 0 };

function aPresentSlate(seed: number): PresentSlate | null {
  const problem = randomSlate({
    seed,
    games: 3,
    officials: 6,
    minorShare: 0.3,
    publishedShare: 0.3,
    legShare: 0.3,
    lockedShare: 0.1,
    days: seed % 2 === 0 ? 2 : 1,
  });
  const slate = compileSlate(problem);
  const solved = solveAgain(slate, new Int32Array(2 * slate.gameCount).fill(NOBODY), { steps: 8192 });
  return solved === null ? null : { problem, slate, holders: solved.holders };
}

it.each(Array.from({ length: 12 }, (_, i) => i + 1))('slate %i', async (seed) => {
  const present = aPresentSlate(seed);
  if (present === null) return;
  const withdrawals = await solveWithdrawals(present, { nowSeconds: () => 0, steps: 8192 });
  expect(withdrawals).toHaveLength(present.slate.officialCount);
  const bounds = withdrawalBounds(present.slate, {
    presentCost: withdrawals[0]!.cost.total,
    priceSteps: 300,
    isOver: () => false,
  });
  for (const { official, seatsHeld, cost, bound, proven, moreOpenSeats, moves } of withdrawals) {
    const { optimum } = bruteForce(withoutOfficial(present.problem, official));
    expect(cost.total).toBeCloseTo(optimum, 6);
    if (bound !== null) expect(bound).toBeLessThanOrEqual(optimum + 1e-6 * Math.max(1, optimum));
    const index = present.slate.officialIds.indexOf(official);
    if (!present.slate.seatLock.includes(index))
      expect(bounds.byOfficial[index]).toBeLessThanOrEqual(optimum + 1e-9 * Math.max(1, optimum));
    if (seatsHeld === 0) expect(moves).toEqual([]);
    else expect(moves.length).toBeGreaterThanOrEqual(seatsHeld);
    seen.withdrawals++;
    if (moreOpenSeats > 0) seen.open++;
    if (proven) seen.proven++;
  }
  const order = withdrawals.map(({ moreOpenSeats, change }) => 1e9 * moreOpenSeats + change.total);
  expect(order).toEqual([...order].sort((a, b) => b - a));
});

it('proves small ones when it is given time and the linear solver', async () => {
  const present = aPresentSlate(3)!;
  let highs: Promise<Highs> | undefined;
  // A clock that ticks each time it is looked at: some hundred looks for each official, however fast the machine.
  let looks = 0;
  const withdrawals = await solveWithdrawals(present, {
    nowSeconds: () => looks++,
    seconds: 5000,
    loadHighs: () => (highs ??= startHighs()),
  });
  const working = withdrawals.filter(({ seatsHeld }) => seatsHeld > 0);
  expect(working.length).toBeGreaterThan(0);
  for (const { official, cost, proven } of working) {
    expect(proven).toBe(true);
    expect(cost.total).toBeCloseTo(bruteForce(withoutOfficial(present.problem, official)).optimum, 6);
  }
});

it('met enough', () => {
  expect(seen.withdrawals).toBeGreaterThan(50);
  expect(seen.open).toBeGreaterThan(10);
});

it('stops when it is told to, with what is done', async () => {
  const present = aPresentSlate(3)!;
  const stop = new AbortController();
  const withdrawals = await solveWithdrawals(present, {
    nowSeconds: () => 0,
    steps: 4096,
    signal: stop.signal,
    onProgress: (done) => {
      if (done === 2) stop.abort();
    },
  });
  expect(withdrawals.filter(({ seatsHeld }) => seatsHeld > 0)).toHaveLength(2);
});
