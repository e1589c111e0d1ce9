// Goal: putting somebody into a seat and solving again tells who else moves and what it costs. Method: a hand-made slate
// where the answer is known, and random ones whose difference is priced anew and whose slate the checker judges.
import {
  checkAnswer,
  explainSeat,
  presentSlate,
  priceSlate,
  reoptimiseSeat,
  solveSlate,
  type SlateProblem,
} from '../../../../src/solver';
import { withLock } from '../../../../src/solver/reasons/changed-problem';
import { writeAnswer } from '../../../../src/solver/solve/write-answer';
import { aGame, anOfficial, aProblem } from '../../../support/solver/slate-builder';
import { bruteForce } from '../../../support/solver/brute-force';
import { randomSlate } from '../../../support/solver/random-slate';

const umpire = (id: string) => anOfficial(id, { mayBeChief: false, level: 1 });

it('hands the seat they held to whoever they replace, and moves nobody without a gain', () => {
  const tipOff = '2026-03-07T12:00:00+01:00';
  const games = [aGame('g', tipOff), aGame('h', tipOff)];
  const officials = [anOfficial('a'), anOfficial('b'), umpire('x'), umpire('y')];
  const problem = aProblem({ games, officials, weights: { openSeat: 100 } });
  const present = presentSlate(problem, [
    { game: 'g', chief: 'a', umpire: 'x' },
    { game: 'h', chief: 'b', umpire: 'y' },
  ]);
  const result = reoptimiseSeat(present, { seat: 0, official: 1 }, { steps: 4096 });
  expect(result).toMatchObject({
    kind: 'solved',
    change: { total: 0 },
    openSeats: 0,
    moves: [
      { game: 'g', seat: 'chief', from: 'a', to: 'b' },
      { game: 'h', seat: 'chief', from: 'b', to: 'a' },
    ],
  });
});

it('says why somebody cannot be there at all', () => {
  const problem = aProblem({ games: [aGame('g', '2026-03-07T12:00:00+01:00')], officials: [umpire('x')] });
  expect(reoptimiseSeat(presentSlate(problem, []), { seat: 0, official: 0 }, { steps: 100 })).toMatchObject({
    kind: 'forbidden',
    reasons: [{ rule: 'H1', message: 'may not be chief' }],
  });
});

it('needs a partner for a minor', () => {
  const officials = [anOfficial('young', { minor: true })];
  const problem = aProblem({ games: [aGame('g', '2026-03-07T12:00:00+01:00')], officials });
  expect(reoptimiseSeat(presentSlate(problem, []), { seat: 1, official: 0 }, { steps: 100 })).toMatchObject({
    kind: 'forbidden',
    reasons: [{ rule: 'H8' }],
  });
});

const seen = { solved: 0, forbidden: 0 };

it.each([1, 2, 3, 4])('random slate %i: finds the optimum that brute force finds', async (seed) => {
  const problem: SlateProblem = randomSlate({ seed, games: 3, officials: 5, minorShare: 0.3, days: 1 });
  const answer = await solveSlate(problem, { nowSeconds: () => 0, steps: 4096 });
  const present = presentSlate(problem, answer.assignments);
  const { slate, holders } = present;
  for (let seat = 0; seat < holders.length; seat++) {
    for (const { official } of explainSeat(slate, holders, seat).candidates.slice(0, 2)) {
      const place = { game: slate.gameIds[seat >> 1]!, seat: seat % 2 === 0 ? 'chief' : 'umpire' } as const;
      const locked = withLock(problem, place, official);
      const result = reoptimiseSeat(
        present,
        { seat, official: slate.officialIds.indexOf(official) },
        { steps: 8192 },
      );
      const { legalSlates, optimum } = bruteForce(locked);
      expect(result.kind).toBe(legalSlates === 0 ? 'forbidden' : 'solved');
      seen[result.kind]++;
      if (result.kind !== 'solved') continue;
      const after = presentSlate(locked, result.assignments);
      const cost = priceSlate(after.slate, after.holders);
      expect(cost.total).toBeCloseTo(optimum, 6);
      expect(result.change.total).toBeCloseTo(optimum - priceSlate(slate, holders).total, 6);
      const written = writeAnswer(locked, after.slate, after.holders, { bound: null, seconds: 0 });
      expect(checkAnswer(locked, written).ok).toBe(true);
      expect(result.moves).toHaveLength(
        holders.filter((holder, index) => holder !== after.holders[index]).length,
      );
    }
  }
});

it('met both', () => {
  expect(seen.solved).toBeGreaterThan(5);
  expect(seen.forbidden).toBeGreaterThan(5);
});
