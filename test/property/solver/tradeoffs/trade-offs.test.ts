// Goal: the proposals are legal slates priced at the problem's own weights, none beaten by another, none paying with
// coverage, spread out, and the same each time. Method: random slates searched by counted steps; figures recomputed
// by the independent checker.
import { checkAnswer, tradeOffs, type SlateProblem, type TradeOffProposal } from '../../../../src/solver';
import { randomSlate } from '../../../support/solver/random-slate';

/** A problem with room for choice: more officials than a slate of this size needs. */
const problemOf = (seed: number): SlateProblem =>
  randomSlate({ seed, games: 16, officials: 26, venues: 3, chiefShare: 0.95, minorShare: 0.1 });

const options = { nowSeconds: () => 0, steps: 80_000 };

const figuresOf = ({ cost }: TradeOffProposal) => [cost.travel, cost.pairing + cost.overLevel, cost.balance];

async function proposalsFor(problem: SlateProblem): Promise<readonly TradeOffProposal[]> {
  const found = await tradeOffs(problem, options);
  if (!found.ok) throw new Error('the locks are illegal');
  return found.proposals;
}

it('a front of at least five', async () => {
  let bettered = 0;
  for (const seed of [1, 2, 3, 4]) {
    const problem = problemOf(seed);
    const proposals = await proposalsFor(problem);
    expect(proposals.length).toBeGreaterThanOrEqual(5);
    expect(proposals.length).toBeLessThanOrEqual(7);
    const base = proposals.find(({ isBase }) => isBase)!;
    expect(proposals.filter(({ isBase }) => isBase)).toEqual([base]);
    for (const proposal of proposals) {
      expectSound(problem, proposal);
      expect(proposal.cost.open).toBeLessThanOrEqual(base.cost.open);
      expect(proposal.cost.total).toBeGreaterThanOrEqual(base.cost.total);
      for (const other of proposals) if (other !== proposal) expectNotBeaten(proposal, other);
    }
    for (const concern of [0, 1, 2]) {
      const best = Math.min(...proposals.map((proposal) => figuresOf(proposal)[concern]!));
      if (best < 0.95 * figuresOf(base)[concern]!) bettered++;
    }
  }
  // In most concerns of most slates somebody who cares for it alone gets markedly more.
  expect(bettered).toBeGreaterThanOrEqual(8);
});

function expectSound(problem: SlateProblem, { assignments, cost }: TradeOffProposal): void {
  const answer = { format: 'slate-answer/1', problem: problem.name, assignments, cost };
  const check = checkAnswer(problem, { ...answer, bound: null, seconds: 0, status: 'feasible' });
  expect(check).toMatchObject({ ok: true, faults: [], violations: [], mismatches: [] });
}

function expectNotBeaten(one: TradeOffProposal, other: TradeOffProposal): void {
  const [a, b] = [figuresOf(one), figuresOf(other)];
  expect(a.some((figure, i) => figure < b[i]!)).toBe(true);
}

it('counted steps give the same proposals again', async () => {
  expect(await proposalsFor(problemOf(5))).toEqual(await proposalsFor(problemOf(5)));
});

it('goes on from a slate that was built already, and stops when asked to', async () => {
  const problem = problemOf(6);
  const base = problem.games.map(({ id }) => ({ game: id, chief: null, umpire: null }));
  const found = await tradeOffs(problem, { ...options, base, signal: AbortSignal.abort() });
  expect(found).toMatchObject({ ok: true, proposals: [{ isBase: true, assignments: base }] });
});
