import { type CompiledSlate } from '../compile/compiled-slate';
import { type ProverSetting } from '../prove/prover-messages';
import { ProverThread } from '../prove/prover-thread';
import { type ControlBlock } from '../search/control-block';
import { type PricedHolders } from '../search/search-run';
import { type ProgressWatch } from './progress-watch';

/** A proof thread answers within this, or what it has told so far must do. */
const GRACE_MS = 300;

export interface ProofSurroundings {
  readonly slate: CompiledSlate;
  readonly control: ControlBlock;
  readonly searchThreads: number;
  readonly watch: ProgressWatch;
}

/** The proof that goes with a run: knows the best slate of both, and ends the run when nothing is left to find. */
export class Proof {
  private thread: ProverThread | null = null;

  constructor(
    private readonly surroundings: ProofSurroundings,
    private best: PricedHolders,
  ) {}

  start(length: ProverSetting['length']): void {
    const { slate, control, searchThreads, watch } = this.surroundings;
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

  /** Waits for the end of the proof, which a cancelled run brings about soon, and gives the best of all. */
  async finish(): Promise<PricedHolders & { readonly bound: number | null }> {
    const { control } = this.surroundings;
    while (this.thread !== null) {
      const ended = this.thread.ended.then(
        () => true,
        // A proof that broke down costs the run nothing but a better bound.
        () => true,
      );
      const patience = new Promise<boolean>((resolve) => setTimeout(() => resolve(false), GRACE_MS).unref());
      if ((await Promise.race([ended, patience])) || control.isCancelled) break;
    }
    return { ...this.best, bound: this.thread?.bound ?? null };
  }

  async close(): Promise<void> {
    await this.thread?.close();
  }
}
