import { Worker } from 'node:worker_threads';
import { type CompiledSlate } from '../compile/compiled-slate';
import { workerEntry } from '../worker-entry';
import { type ControlBlock } from './control-block';
import { StintRunner, type Stint, type StintResult } from './stint';

/** Somebody who runs stints, one after the other. */
export interface SearchThread {
  run(stint: Stint): Promise<StintResult>;
  close(): Promise<void>;
}

export interface ThreadSetting {
  readonly slate: CompiledSlate;
  readonly control: ControlBlock;
  readonly thread: number;
  readonly seed: number;
}

/** Searches in the calling thread and lets its other work run after every few thousand steps. */
export class InlineThread implements SearchThread {
  private readonly runner: StintRunner;

  constructor(
    { slate, control, thread, seed }: ThreadSetting,
    private readonly onPause: () => void,
  ) {
    this.runner = new StintRunner(slate, control, thread, seed);
  }

  async run(stint: Stint): Promise<StintResult> {
    const run = this.runner.run(stint);
    for (;;) {
      const step = run.next();
      if (step.done === true) return step.value;
      this.onPause();
      await new Promise((resume) => setImmediate(resume));
    }
  }

  async close(): Promise<void> {}
}

/** What a worker is started with; the slate's arrays and the control block are shared, not copied. */
export interface WorkerSetting {
  readonly slate: CompiledSlate;
  readonly controlMemory: SharedArrayBuffer;
  readonly thread: number;
  readonly seed: number;
}

/** Searches in a thread of its own. */
export class WorkerThread implements SearchThread {
  private readonly worker: Worker;

  constructor({ slate, control, thread, seed }: ThreadSetting) {
    const workerData: WorkerSetting = { slate, controlMemory: control.memory, thread, seed };
    this.worker = new Worker(workerEntry(__dirname, 'search-worker'), { workerData });
  }

  run(stint: Stint): Promise<StintResult> {
    return new Promise((resolve, reject) => {
      const settle = (finish: () => void) => {
        this.worker.off('message', onMessage);
        this.worker.off('error', onError);
        this.worker.off('exit', onExit);
        finish();
      };
      const onMessage = (result: StintResult) => settle(() => resolve(result));
      const onError = (error: Error) => settle(() => reject(error));
      const onExit = (code: number) =>
        settle(() => reject(new Error(`a search thread ended early (exit code ${code})`)));
      this.worker.on('message', onMessage);
      this.worker.on('error', onError);
      this.worker.on('exit', onExit);
      this.worker.postMessage(stint);
    });
  }

  async close(): Promise<void> {
    await this.worker.terminate();
  }
}
