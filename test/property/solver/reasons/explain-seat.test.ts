// Goal: every reason and every price of `explainSeat` is true, on legal and on illegal slates. Method: each official is
// really placed in each seat of random slates, and judged and priced by the checker, which shares nothing with the rules.
import { COST_TERMS, compileSlate, explainSeat, priceSlate, type PresentSlate } from '../../../../src/solver';
import { NOBODY } from '../../../../src/solver/compile/facts';
import { SeededRandom } from '../../../../src/solver/random';
import { solveAgain } from '../../../../src/solver/reasons/solve-again';
import { PlacedSlate, rulesOf } from '../../../support/solver/placed-slate';
import { randomSlate } from '../../../support/solver/random-slate';

function aPresentSlate(seed: number, kind: 'legal' | 'illegal'): PresentSlate {
  const drawn = randomSlate({
    seed,
    games: 9,
    officials: 8,
    minorShare: 0.5,
    publishedShare: 0.3,
    legShare: 0.5,
    ...(kind === 'illegal' ? { lockedShare: 0.2 } : {}),
  });
  // Nights long enough that rest between the days binds some.
  const problem = { ...drawn, policy: { ...drawn.policy, minRestMinutes: 900 } };
  const slate = compileSlate(problem);
  const nobody = new Int32Array(2 * slate.gameCount).fill(NOBODY);
  if (kind === 'legal')
    return { problem, slate, holders: solveAgain(slate, nobody, { steps: 4096 })!.holders };
  const random = new SeededRandom(seed, 5);
  const holders = nobody.map(() => random.below(slate.officialCount + 1) - 1);
  return { problem, slate, holders };
}

describe.each(['legal', 'illegal'] as const)('on %s slates', (kind) => {
  const seen = { allowed: 0, forbidden: 0, exchanges: 0, rules: new Set<string>(), broken: 0 };

  it.each(Array.from({ length: 10 }, (_, i) => i + 1))('slate %i', (seed) => {
    const present = aPresentSlate(seed, kind);
    const { slate, holders } = present;
    const placed = new PlacedSlate(present);
    const before = placed.price(holders);
    for (let seat = 0; seat < holders.length; seat++) {
      const { holder, candidates } = explainSeat(slate, holders, seat);
      expect(candidates).toHaveLength(slate.officialCount - (holder === null ? 0 : 1));
      if (holder !== null) {
        const left = placed.with([{ seat, holder: NOBODY }]);
        expect(rulesOf(holder.reasons)).toEqual(rulesOf(placed.newViolations(left, holders)));
        expect(holder.leaving.total).toBeCloseTo(placed.price(left).total - before.total, 6);
        seen.broken += holder.reasons.length;
      }
      for (const candidate of candidates) {
        const official = slate.officialIds.indexOf(candidate.official);
        const after = placed.with([{ seat, holder: official }]);
        const reasons = candidate.kind === 'forbidden' ? candidate.reasons : [];
        expect(rulesOf(reasons)).toEqual(rulesOf(placed.newViolations(holders, after)));
        for (const { rule } of reasons) seen.rules.add(rule);
        seen[candidate.kind]++;
        if (candidate.kind === 'allowed') {
          const cost = placed.price(after);
          const own = priceSlate(slate, after).total - priceSlate(slate, holders).total;
          expect(Math.abs(candidate.change.total - own)).toBeLessThan(1e-6);
          const wrong = COST_TERMS.filter(
            (term) => Math.abs(candidate.change[term] - (cost[term] - before[term])) > 1e-6,
          );
          expect(wrong).toEqual([]);
        }
        if (candidate.exchange === null) continue;
        seen.exchanges++;
        const { gives, to, change } = candidate.exchange;
        const given = 2 * slate.gameIds.indexOf(gives.game) + (gives.seat === 'chief' ? 0 : 1);
        expect(holders[given]).toBe(official);
        expect(to).toBe(holder?.official ?? null);
        const exchanged = placed.with([
          { seat, holder: official },
          { seat: given, holder: holders[seat]! },
        ]);
        expect(placed.newViolations(holders, exchanged)).toEqual([]);
        expect(Math.abs(change.total - (placed.price(exchanged).total - before.total))).toBeLessThan(1e-6);
      }
      const order = candidates.map((candidate) =>
        candidate.kind === 'allowed' ? candidate.change.total : Infinity,
      );
      expect(order).toEqual([...order].sort((a, b) => a - b));
    }
  });

  it('met every rule and enough of everything', () => {
    const rules = ['H1', 'H10', 'H2', 'H3', 'H4', 'H5', 'H7', 'H8', 'H9'];
    expect([...seen.rules].sort()).toEqual(kind === 'legal' ? rules : [...rules, 'H6'].sort());
    expect(seen.allowed).toBeGreaterThan(20);
    expect(seen.forbidden).toBeGreaterThan(500);
    expect(seen.exchanges).toBeGreaterThan(10);
    if (kind === 'illegal') expect(seen.broken).toBeGreaterThan(100);
  });
});
