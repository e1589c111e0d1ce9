// Goal: changes to a problem that must not matter do not, and those that must, do so by the right amount. Method:
// tiny random slates are changed and both versions solved; the costs of the two optima are compared.
import { solveSlate, type SlateProblem, type Weights } from '../../../src/solver';
import { SeededRandom } from '../../../src/solver/random';
import { randomSlate } from '../../support/solver/random-slate';
import { anOfficial } from '../../support/solver/slate-builder';

const SEEDS = Array.from({ length: 25 }, (_, i) => i + 1);

const tiny = (seed: number) =>
  randomSlate({
    seed,
    games: 3,
    officials: 4,
    venues: 2,
    minorShare: 0.4,
    publishedShare: 0.3,
    legShare: 0.3,
  });

async function optimum(problem: SlateProblem): Promise<number> {
  return (await solveSlate(problem, { nowSeconds: () => 0, steps: 20_000 })).cost.total;
}

/** Solves both versions for every seed; `relate` states what has to hold. */
async function forAll(
  change: (problem: SlateProblem, seed: number) => SlateProblem,
  relate: (before: number, after: number) => void,
) {
  let costly = 0;
  for (const seed of SEEDS) {
    const before = await optimum(tiny(seed));
    relate(before, await optimum(change(tiny(seed), seed)));
    if (before > 0) costly++;
  }
  expect(costly).toBeGreaterThan(20);
}

const same = (before: number, after: number) => expect(after).toBeCloseTo(before, 6);

function shuffled<T>(list: readonly T[], random: SeededRandom): T[] {
  const rest = [...list];
  return list.map(() => rest.splice(random.below(rest.length), 1)[0]!);
}

it('the order of the lists changes nothing, not even the slate', async () => {
  for (const seed of SEEDS.slice(0, 8)) {
    const random = new SeededRandom(seed);
    const problem = randomSlate({ seed, games: 16, officials: 15 });
    const mixed = {
      ...problem,
      games: shuffled(problem.games, random),
      officials: shuffled(problem.officials, random),
      places: shuffled(problem.places, random),
      divisions: shuffled(problem.divisions, random),
    };
    const options = { nowSeconds: () => 0, steps: 8192 };
    const [one, other] = [await solveSlate(problem, options), await solveSlate(mixed, options)];
    const byGame = new Map(other.assignments.map((assignment) => [assignment.game, assignment]));
    expect(one.assignments.map(({ game }) => byGame.get(game))).toEqual(one.assignments);
    expect(other.cost).toEqual(one.cost);
  }
});

it('an official nobody may use changes nothing but their own balance', async () => {
  await forAll(
    (problem) => ({
      ...problem,
      officials: [...problem.officials, anOfficial('idle', { home: 'gym-1', available: [] })],
    }),
    same,
  );
});

it('moving everything by whole weeks changes nothing', async () => {
  // Within winter time, so that the days keep their length.
  const weeks = (text: string) => new Date(Date.parse(text) + 4 * 7 * 86_400_000).toISOString();
  const shift = (problem: SlateProblem) =>
    JSON.parse(JSON.stringify(problem).replaceAll(/\d{4}-\d\d-\d\dT[\d:.]+Z/g, weeks)) as SlateProblem;
  for (const seed of SEEDS) same(await optimum(shift(tiny(seed))), await optimum(shift(shift(tiny(seed)))));
});

it('new names change nothing', async () => {
  await forAll(
    (problem) =>
      JSON.parse(
        JSON.stringify(problem).replaceAll(/"(official|game|gym|team)-(\d+)"/g, '"zz $2 $1"'),
      ) as SlateProblem,
    same,
  );
});

it('weights and pairing tables times three make the cost times three', async () => {
  await forAll(
    (problem) => {
      const weights: Record<keyof Weights, number> = { ...problem.policy.weights };
      for (const key of Object.keys(weights) as (keyof typeof weights)[]) weights[key] *= 3;
      const divisions = problem.divisions.map((division) => ({
        ...division,
        pairingCost: division.pairingCost.map((cost) => 3 * cost),
      }));
      return { ...problem, divisions, policy: { ...problem.policy, weights } };
    },
    (before, after) => expect(after).toBeCloseTo(3 * before, 6),
  );
});

it('relaxing a rule never makes the optimum dearer', async () => {
  await forAll(
    (problem) => ({
      ...problem,
      officials: problem.officials.map((official) => ({ ...official, maxHomeMinutes: 9999, maxGames: 99 })),
    }),
    (before, after) => expect(after).toBeLessThanOrEqual(before + 1e-6),
  );
});

it('tightening a rule never makes it cheaper', async () => {
  await forAll(
    (problem) => ({
      ...problem,
      policy: { ...problem.policy, sameVenueGapMinutes: 60, minRestMinutes: 900 },
    }),
    (before, after) => expect(after).toBeGreaterThanOrEqual(before - 1e-6),
  );
});
