// Goal: the assignment solver finds the cheapest permutation. Method: every permutation of small random tables,
// negative figures and ties among them.
import { SeededRandom } from '../../../src/solver/random';
import { solveAssignment } from '../../../src/solver/search/assignment';

function cheapest(n: number, cost: Float64Array, row = 0, used = 0): number {
  if (row === n) return 0;
  let best = Infinity;
  for (let column = 0; column < n; column++) {
    if ((used >> column) & 1) continue;
    best = Math.min(best, cost[row * n + column]! + cheapest(n, cost, row + 1, used | (1 << column)));
  }
  return best;
}

it.each([1, 2, 3, 5, 7])('finds the cheapest of all permutations of %d', (n) => {
  const random = new SeededRandom(n);
  for (let table = 0; table < 60; table++) {
    const cost = Float64Array.from({ length: n * n }, () => random.below(20) - 8);
    const columnOfRow = new Int32Array(n);
    solveAssignment(n, cost, columnOfRow);
    expect(new Set(columnOfRow).size).toBe(n);
    const total = columnOfRow.reduce((sum, column, row) => sum + cost[row * n + column]!, 0);
    expect(total).toBe(cheapest(n, cost));
  }
});
