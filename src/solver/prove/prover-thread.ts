import { Worker } from 'node:worker_threads';
import { type Holders } from '../tours';
import { workerEntry } from '../worker-entry';
import { type BetterSlate, type ProverNews, type ProverSetting } from './prover-messages';

/** A proof going on in a thread of its own, seen from the coordinator. */
export class ProverThread {
  /** The best bound so far; null while there is none. */
  bound: number | null = null;
  /** A slate that the proof found on its way and that was better than any other then known to it. */
  found: { readonly holders: Holders; readonly cost: number } | null = null;
  /** Resolves when the thread has nothing more to tell, to whether the optimum is proven. */
  readonly ended: Promise<boolean>;
  private readonly worker: Worker;

  constructor(setting: ProverSetting, onNews: (prover: ProverThread, proven: boolean) => void) {
    this.worker = new Worker(workerEntry(__dirname, 'prover-worker'), { workerData: setting });
    this.ended = new Promise((resolve, reject) => {
      this.worker.on('message', (news: ProverNews) => {
        if (news.kind === 'bound') this.bound = Math.max(news.bound, this.bound ?? -Infinity);
        if (news.kind === 'slate' && news.cost < (this.found?.cost ?? Infinity)) this.found = news;
        onNews(this, news.kind === 'end' && news.proven);
        if (news.kind === 'end') resolve(news.proven);
      });
      this.worker.on('error', reject);
      this.worker.on('exit', () => resolve(false));
    });
    // Whoever waits hears of an error; while nobody does it must not end the process.
    this.ended.catch(() => undefined);
  }

  tellBetter(better: BetterSlate): void {
    this.worker.postMessage(better);
  }

  async close(): Promise<void> {
    await this.worker.terminate();
  }
}
