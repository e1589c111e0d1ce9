import { availableParallelism } from 'node:os';
import { extname, join, sep } from 'node:path';
import { Worker } from 'node:worker_threads';
import type { SlateAnswer, SlateProblem, SolveProgress } from '../solver';
import type { SlateSolver, SlateSolverOptions } from './slate-solver';

/** What the thread is started with. */
export interface SolveThreadSetting {
  readonly problem: SlateProblem;
  readonly seconds: number;
  readonly seed: number;
  readonly threads: number;
}

/** What the thread says. */
export type SolveThreadMessage =
  | { readonly kind: 'progress'; readonly progress: SolveProgress }
  | { readonly kind: 'answer'; readonly answer: SlateAnswer };

const threadsMax = 4;

/** Solves in a thread of its own, so that pages are answered meanwhile; one processor is left to them. */
export class ThreadSolver implements SlateSolver {
  constructor(private readonly threads = Math.max(1, Math.min(threadsMax, availableParallelism() - 1))) {}

  async solve(problem: SlateProblem, options: SlateSolverOptions): Promise<SlateAnswer> {
    const { seconds, seed, signal, onProgress } = options;
    const workerData: SolveThreadSetting = { problem, seconds, seed, threads: this.threads };
    const worker = new Worker(threadEntry(), { workerData });
    const stop = () => worker.postMessage('stop');
    signal.addEventListener('abort', stop, { once: true });
    if (signal.aborted) stop();
    try {
      return await new Promise<SlateAnswer>((resolve, reject) => {
        worker.on('message', (message: SolveThreadMessage) => {
          if (message.kind === 'answer') resolve(message.answer);
          else onProgress(message.progress);
        });
        worker.once('error', reject);
        worker.once('exit', (code) =>
          reject(new Error(`The solver's thread ended early (exit code ${code}).`)),
        );
      });
    } finally {
      signal.removeEventListener('abort', stop);
      await worker.terminate();
    }
  }
}

/** Threads run compiled code; under a test runner that compiles on the fly it lies in `dist`. */
function threadEntry(): string {
  if (extname(__filename) === '.js') return join(__dirname, 'solve-thread.js');
  const sources = `${sep}src${sep}`;
  const root = __dirname.lastIndexOf(sources);
  return join(__dirname.slice(0, root), 'dist', __dirname.slice(root), 'solve-thread.js');
}
