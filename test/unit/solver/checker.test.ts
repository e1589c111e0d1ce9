// Goal: the independent checker notices every wrong claim of an answer. Method: a sound answer, falsified figure by
// figure.
import { checkAnswer, COST_TERMS, solveSlate, type SlateAnswer } from '../../../src/solver';
import { randomSlate } from '../../support/solver/random-slate';

const problem = randomSlate({ seed: 21, games: 8, officials: 9, publishedShare: 1 });
let sound: SlateAnswer;

beforeAll(async () => {
  sound = await solveSlate(problem, { nowSeconds: () => 0, steps: 20_000 });
});

it('accepts a sound answer, with and without a bound', () => {
  expect(checkAnswer(problem, sound)).toMatchObject({ ok: true });
  expect(checkAnswer(problem, { ...sound, bound: sound.cost.total - 1 })).toMatchObject({ ok: true });
  expect(checkAnswer(problem, { ...sound, bound: sound.cost.total, status: 'optimal' })).toMatchObject({
    ok: true,
  });
});

it.each(['total', ...COST_TERMS] as const)('notices a wrong %s', (term) => {
  const cost = { ...sound.cost, [term]: sound.cost[term] * 1.00001 + 0.01 };
  expect(checkAnswer(problem, { ...sound, cost }).mismatches).toHaveLength(1);
});

it('notices a bound above the total and an optimum that no bound proves', () => {
  expect(checkAnswer(problem, { ...sound, bound: sound.cost.total + 1 }).mismatches).toHaveLength(1);
  expect(checkAnswer(problem, { ...sound, bound: null, status: 'optimal' }).mismatches).toHaveLength(1);
  expect(
    checkAnswer(problem, { ...sound, bound: sound.cost.total - 1, status: 'optimal' }).mismatches,
  ).toHaveLength(1);
  expect(checkAnswer(problem, { ...sound, status: 'infeasible' }).mismatches).toHaveLength(1);
});

it.each<[string, string, (answer: Record<string, unknown>) => void]>([
  ['another problem', 'problem', (a) => void (a['problem'] = 'another')],
  ['an unknown key', 'extra', (a) => void (a['extra'] = 1)],
  ['an unknown status', 'status', (a) => void (a['status'] = 'perfect')],
  ['a game left out', 'assignments', (a) => void (a['assignments'] as unknown[]).pop()],
  [
    'a game twice',
    'assignments[8].game',
    (a) => void (a['assignments'] as unknown[]).push((a['assignments'] as unknown[])[0]),
  ],
  [
    'an unknown official',
    'assignments[0].chief',
    (a) => void ((a['assignments'] as { chief: string }[])[0]!.chief = 'constructor'),
  ],
  ['a missing term', 'cost.travel', (a) => void delete (a['cost'] as Record<string, unknown>)['travel']],
])('refuses %s', (_, path, spoil) => {
  const answer = JSON.parse(JSON.stringify(sound)) as Record<string, unknown>;
  spoil(answer);
  const report = checkAnswer(problem, answer);
  expect(report.ok).toBe(false);
  expect(report.faults.map((fault) => fault.path)).toEqual([path]);
});
