import { type CompiledSlate } from '../compile/compiled-slate';
import { SeededRandom } from '../random';
import { type Holders } from '../tours';
import { type CoolingSchedule } from './acceptance';
import { Annealer } from './anneal';
import { BestSlate } from './best-slate';
import { type ControlBlock } from './control-block';
import { Neighbourhood, wholeSlate, type Region } from './moves/neighbourhood';
import { drawMove } from './moves/move-mix';
import { SlateState } from './slate-state';
import { type Stopping } from './stopping';

/** One piece of search: from a slate, within a region, over a range of temperatures, for a while. */
export interface Stint {
  readonly holders: Holders;
  /** Null for the whole slate. */
  readonly region: Region | null;
  readonly cooling: CoolingSchedule;
  readonly length: StintLength;
}

/** By steps, the same on every machine, or until an instant of the coordinator's clock. */
export type StintLength = { readonly steps: number } | { readonly endSeconds: number };

export interface StintResult {
  /** The slate at the end, for the next stint to go on from. */
  readonly current: Holders;
  readonly best: Holders;
  readonly bestCost: number;
}

/** A search that keeps its memory from stint to stint; one for each thread. */
export class StintRunner {
  private state: SlateState | null = null;
  private around: Neighbourhood | null = null;
  private readonly random: SeededRandom;

  constructor(
    private readonly slate: CompiledSlate,
    private readonly control: ControlBlock,
    private readonly thread: number,
    seed: number,
  ) {
    this.random = new SeededRandom(seed, thread);
  }

  /** Pauses after each round of steps, so that a caller with other duties can see to them. */
  *run(stint: Stint): Generator<undefined, StintResult> {
    const state = (this.state ??= new SlateState(this.slate, stint.holders));
    state.reset(stint.holders);
    const around = this.neighbourhood(state, stint.region ?? wholeSlate(this.slate));
    const best = new BestSlate(state.holders, state.cost, state.openCount);
    this.control.report(this.thread, best.cost, best.openSeats);
    const annealer = new Annealer(around, {
      move: drawMove,
      cooling: stint.cooling,
      stopping: this.stoppingOf(stint.length),
      best,
    });
    while (annealer.round()) {
      this.control.report(this.thread, best.cost, best.openSeats);
      yield;
    }
    this.control.report(this.thread, best.cost, best.openSeats);
    return { current: state.holders.slice(), best: best.holders, bestCost: best.cost };
  }

  private neighbourhood(state: SlateState, region: Region): Neighbourhood {
    const before = this.around;
    this.around = new Neighbourhood(state, this.random, region, before?.candidates, before?.nearby);
    return this.around;
  }

  private stoppingOf(length: StintLength): Stopping {
    const { control } = this;
    if ('steps' in length) {
      return {
        progress: (done) => (length.steps <= 0 ? 1 : done / length.steps),
        isCancelled: () => control.isCancelled,
      };
    }
    const startSeconds = control.nowSeconds;
    const span = length.endSeconds - startSeconds;
    return {
      progress: () => (span <= 0 ? 1 : (control.nowSeconds - startSeconds) / span),
      isCancelled: () => control.isCancelled,
    };
  }
}
