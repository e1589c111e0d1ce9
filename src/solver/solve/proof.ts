import { type CompiledSlate } from '../compile/compiled-slate';
import { type ProverSetting } from '../prove/prover-messages';
import { ProverThread } from '../prove/prover-thread';
import { type ControlBlock } from '../search/control-block';
import { type PricedHolders } from '../search/search-run';
import { type ProgressWatch } from './progress-watch';

/** A proof may be deep in one long calculation; at its end or when cancelled it is not waited for any longer than this. */
const GRACE_SECONDS = 0.2;
const LOOK_MS = 20;

export interface ProofSurroundings {
  readonly slate: CompiledSlate;
  readonly control: ControlBlock;
  readonly searchThreads: number;
  readonly watch: ProgressWatch;
}

/** The proof that goes with a run: knows the best slate of both, and ends the run when nothing is left to find. */
export class Proof {
  private thread: ProverThread | null = null;
  private waiting: NodeJS.Timeout | undefined;
  /** On the control block's clock; infinite for a proof that counts its steps. */
  private endSeconds = Infinity;

  constructor(
    private readonly surroundings: ProofSurroundings,
    private best: PricedHolders,
  ) {}

  startAfter(seconds: number, length: ProverSetting['length']): void {
    if (seconds <= 0) this.start(length);
    else this.waiting = setTimeout(() => this.start(length), 1000 * seconds);
  }

  start(length: ProverSetting['length']): void {
    const { slate, control, searchThreads, watch } = this.surroundings;
    if ('endSeconds' in length) this.endSeconds = length.endSeconds;
    const setting: ProverSetting = {
      slate,
      controlMemory: control.memory,
      searchThreads,
      length,
      holders: this.best.holders,
      cost: this.best.cost,
    };
    this.thread = new ProverThread(setting, ({ bound, found }, proven) => {
      if (bound !== null) watch.noteBound(bound);
      if (found !== null && found.cost < this.best.cost) this.best = found;
      if (proven) control.cancel();
    });
  }

  tellBetter(slate: PricedHolders): void {
    if (slate.cost >= this.best.cost) return;
    this.best = slate;
    this.thread?.tellBetter(slate);
  }

  /**
   * Waits for the end of the proof, but hardly beyond its time or a cancelled run's end: what it has told so
   * far then has to do. Gives the best slate of all and the best bound.
   */
  async finish(): Promise<PricedHolders & { readonly bound: number | null }> {
    clearTimeout(this.waiting);
    const { control } = this.surroundings;
    if (this.thread !== null) {
      // A proof that broke down costs the run nothing but a better bound.
      const ended = this.thread.ended.catch(() => false).then(() => true);
      let lastSeconds = this.endSeconds + GRACE_SECONDS;
      while (!(await Promise.race([ended, pause(LOOK_MS)]))) {
        if (control.isCancelled) lastSeconds = Math.min(lastSeconds, control.nowSeconds + GRACE_SECONDS);
        if (control.nowSeconds >= lastSeconds) break;
      }
    }
    return { ...this.best, bound: this.thread?.bound ?? null };
  }

  async close(): Promise<void> {
    clearTimeout(this.waiting);
    await this.thread?.close();
  }
}

/** Resolves to false after a while. */
function pause(ms: number): Promise<false> {
  return new Promise((resolve) => setTimeout(() => resolve(false), ms));
}
