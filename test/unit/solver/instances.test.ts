// Goal: a short search on the project's own instances stays as good as it was. Method: the best totals of several
// runs of up to eight million steps stand here as marks; a run of half a million has to come within one per cent of
// their cost above open seats, and leave no more open.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { checkAnswer, readProblem, solveSlate } from '../../../src/solver';

it.each([
  { name: 'weekend-24', best: 3314.842, open: 0 },
  { name: 'scarce-chiefs-30', best: 114_818.523, open: 110_000 },
])('$name', async ({ name, best, open }) => {
  const read = readProblem(JSON.parse(readFileSync(join(__dirname, `../../instances/${name}.json`), 'utf8')));
  if (!read.ok) throw new Error('the instance is sound');
  const answer = await solveSlate(read.problem, { nowSeconds: () => 0, steps: 500_000 });
  expect(checkAnswer(read.problem, answer).ok).toBe(true);
  expect(answer.cost.open).toBe(open);
  expect(answer.cost.total - open).toBeLessThanOrEqual((best - open) * 1.01);
});
