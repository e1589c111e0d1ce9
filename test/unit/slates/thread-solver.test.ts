// Goal: a slate is solved away from the thread that answers pages, reports on its way and ends early when asked.
// Method: the real thread (compiled, in dist) on a small slate; the event loop's pulse is counted meanwhile.
import { mapSlateProblem } from '../../../src/slates/slate-problem-mapping';
import { ThreadSolver } from '../../../src/slates/thread-solver';
import { checkAnswer, type SolveProgress } from '../../../src/solver';
import { recordedGame, recordedOfficial, slateRecords } from './slate-records.builder';

const { problem } = mapSlateProblem(
  slateRecords({
    officials: ['o1', 'o2', 'o3', 'o4'].map((id) => recordedOfficial({ id })),
    games: ['g1', 'g2', 'g3'].map((id, index) =>
      recordedGame({ id, startsAt: new Date(Date.parse('2026-11-28T09:00:00Z') + index * 3 * 3_600_000) }),
    ),
  }),
);

test('it answers legally, and the event loop goes on meanwhile', async () => {
  let pulses = 0;
  const pulse = setInterval(() => (pulses += 1), 10);
  const answer = await new ThreadSolver(1).solve(problem, {
    seconds: 1,
    seed: 1,
    signal: new AbortController().signal,
    onProgress: () => undefined,
  });
  clearInterval(pulse);
  expect(checkAnswer(problem, answer)).toMatchObject({ ok: true, seats: { filled: 6 } });
  // A thread that computes for long stretches would leave fewer; a busy machine leaves some.
  if (answer.seconds > 0.5) expect(pulses).toBeGreaterThan(10);
});

test('it stops when asked and keeps its best', async () => {
  const stopping = new AbortController();
  const seen: SolveProgress[] = [];
  const startedAt = performance.now();
  const answer = await new ThreadSolver(1).solve(problem, {
    seconds: 600,
    seed: 1,
    signal: stopping.signal,
    onProgress: (progress) => {
      seen.push(progress);
      stopping.abort();
    },
  });
  expect(checkAnswer(problem, answer).ok).toBe(true);
  expect(performance.now() - startedAt).toBeLessThan(60_000);
});

test('a stop that came before the start is obeyed', async () => {
  const answer = await new ThreadSolver(1).solve(problem, {
    seconds: 600,
    seed: 1,
    signal: AbortSignal.abort(),
    onProgress: () => undefined,
  });
  expect(checkAnswer(problem, answer).ok).toBe(true);
}, 60_000);

test('a thread that breaks down fails the solve', async () => {
  const broken = { ...problem, games: null } as unknown as typeof problem;
  await expect(
    new ThreadSolver(1).solve(broken, {
      seconds: 1,
      seed: 1,
      signal: new AbortController().signal,
      onProgress: () => undefined,
    }),
  ).rejects.toThrow();
});
