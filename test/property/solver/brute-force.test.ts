// Goal: on slates small enough to try everything, the solver finds the cheapest legal one. Method: hundreds of
// random tiny slates (locks, minors, published seats and measured legs among them), every filling of every seat
// judged and priced by the independent checker, compared with a short search.
import { checkAnswer, solveSlate } from '../../../src/solver';
import { bruteForce } from '../../support/solver/brute-force';
import { randomSlate } from '../../support/solver/random-slate';

const SLATES = 240;

describe('tiny slates against brute force', () => {
  it('reaches the optimum, or says rightly that the locks are illegal', async () => {
    const counted = { optimal: 0, infeasible: 0, openSeats: 0, minors: 0 };
    for (let seed = 1; seed <= SLATES; seed++) {
      const problem = randomSlate({
        seed,
        games: 1 + (seed % 3),
        officials: 2 + (seed % 4),
        venues: 1 + (seed % 2),
        minorShare: 0.5,
        publishedShare: 0.3,
        lockedShare: 0.15,
        legShare: 0.5,
      });
      const { legalSlates, optimum } = bruteForce(problem);
      const answer = await solveSlate(problem, { nowSeconds: () => 0, steps: 20_000, seed });
      const report = checkAnswer(problem, answer);
      expect({ seed, ...report }).toMatchObject({ ok: true, faults: [], violations: [], mismatches: [] });
      if (legalSlates === 0) {
        expect({ seed, status: answer.status }).toEqual({ seed, status: 'infeasible' });
        counted.infeasible++;
        continue;
      }
      expect(answer.status).not.toBe('infeasible');
      expect({ seed, total: answer.cost.total }).toEqual({
        seed,
        total: expect.closeTo(optimum, 6) as unknown,
      });
      expect(answer.bound ?? -Infinity).toBeLessThanOrEqual(optimum + 1e-6);
      counted.optimal++;
      if (answer.cost.open > 0) counted.openSeats++;
      if (problem.officials.some((official) => official.minor)) counted.minors++;
    }
    // The property means something only if slates of every kind were among them.
    expect(Math.min(...Object.values(counted))).toBeGreaterThan(5);
  });
});
