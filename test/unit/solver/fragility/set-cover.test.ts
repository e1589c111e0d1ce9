// Goal: the cover is a cover, and the fewest sets. Method: random families against trying every choice of sets.
import { smallestCover } from '../../../../src/solver/fragility/set-cover';
import { SeededRandom } from '../../../../src/solver/random';

function fewest(rowCount: number, sets: readonly (readonly number[])[]): number {
  const coverable = new Set(sets.flat());
  let best = Infinity;
  for (let choice = 0; choice < 1 << sets.length; choice++) {
    const chosen = sets.filter((_, set) => (choice >> set) % 2 === 1);
    if (chosen.length < best && new Set(chosen.flat()).size === coverable.size) best = chosen.length;
  }
  expect(coverable.size).toBeLessThanOrEqual(rowCount);
  return best;
}

it.each(Array.from({ length: 40 }, (_, i) => i + 1))('family %i', (seed) => {
  const random = new SeededRandom(seed);
  const rowCount = 1 + random.below(14);
  const sets = Array.from({ length: random.below(11) }, () =>
    Array.from({ length: rowCount }, (_, row) => row).filter(() => random.unit() < 0.3),
  );
  const { chosen, atLeast } = smallestCover(rowCount, sets);
  expect(new Set(chosen.flatMap((set) => sets[set]!)).size).toBe(new Set(sets.flat()).size);
  expect(chosen).toHaveLength(fewest(rowCount, sets));
  expect(atLeast).toBe(chosen.length);
});

it('beats the greedy choice where that is caught out', () => {
  // The large set in the middle is tempting and useless: the two rows of six cover everything.
  const sets = [
    [0, 1, 2, 3, 4, 5],
    [6, 7, 8, 9, 10, 11],
    [0, 1, 2, 3, 6, 7, 8, 9],
    [4, 10],
    [5, 11],
  ];
  expect(smallestCover(12, sets).chosen).toEqual([0, 1]);
});
