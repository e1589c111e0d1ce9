// Goal: a classic problem with a known optimum is solved through the same door as any slate. Source: OR-Library,
// assign100, optimum 305 (see orlib/README.md). Method: officials are rows, games are columns, costs are ways.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { checkAnswer, readProblem, solveSlate } from '../../../src/solver';
import { assignmentSlate, readAssignment } from '../../support/solver/assignment-slate';

it('assign100 reaches its optimum of 305, and proves it', async () => {
  const costs = readAssignment(readFileSync(join(__dirname, 'orlib/assign100.txt.gz')));
  const read = readProblem(assignmentSlate('assign100', costs));
  if (!read.ok) throw new Error('the slate is sound');
  const nowSeconds = () => performance.now() / 1000;
  const answer = await solveSlate(read.problem, { nowSeconds, seconds: 24, threads: 2 });
  expect(checkAnswer(read.problem, answer)).toMatchObject({ ok: true });
  expect(answer.cost.total).toBeCloseTo(305, 9);
  expect(answer.status).toBe('optimal');
  // The travel is that of one entry a row and a column.
  const entries = answer.assignments.map(({ game, chief }) => ({
    row: Number(chief?.split(' ')[1]),
    column: Number(game.split(' ')[1]),
  }));
  expect(new Set(entries.map(({ row }) => row)).size).toBe(100);
  expect(entries.reduce((sum, { row, column }) => sum + costs[row]![column]!, 0)).toBe(305);
}, 90_000);
