import { parentPort, workerData } from 'node:worker_threads';
import { solveSlate } from '../solver';
import type { SolveThreadMessage, SolveThreadSetting } from './thread-solver';

/** The thread of `ThreadSolver`: solves what it was started with, reports, and ends early on any message. */
async function solveInThread(): Promise<void> {
  const { problem, seconds, seed, threads } = workerData as SolveThreadSetting;
  const stopping = new AbortController();
  parentPort?.once('message', () => stopping.abort());
  const say = (message: SolveThreadMessage) => parentPort?.postMessage(message);
  const answer = await solveSlate(problem, {
    nowSeconds: () => performance.now() / 1000,
    seconds,
    seed,
    threads,
    signal: stopping.signal,
    onProgress: (progress) => say({ kind: 'progress', progress }),
  });
  say({ kind: 'answer', answer });
}

void solveInThread();
