import { acceptanceLimit, temperatureAt, type CoolingSchedule } from './acceptance';
import { type BestSlate } from './best-slate';
import { ChangeList } from './change-list';
import { type Move, type Neighbourhood } from './moves/neighbourhood';
import { Rematch } from './rematch';
import { type Stopping } from './stopping';

/** Between two looks at temperature, time and cancellation; a few hundredths of a second at most. */
const STEPS_PER_ROUND = 4096;
/** Below this temperature, in cost units, whole days are dealt anew now and then. */
const REMATCH_TEMPERATURE_MAX = 5;
const REMATCHES_PER_ROUND = 3;
/** A record has to be better by more than rounding. */
const IMPROVEMENT_MIN = 1e-7;

export interface AnnealOptions {
  readonly move: Move;
  readonly cooling: CoolingSchedule;
  readonly stopping: Stopping;
  /** Updated whenever the run finds a cheaper slate. */
  readonly best: BestSlate;
  /** Called after each accepted move; assertion mode hangs here. */
  readonly afterMove?: () => void;
}

/** The decision loop: propose, price, accept or not, until told to stop. */
export class Annealer {
  private readonly changes = new ChangeList();
  private readonly rematch: Rematch;
  private steps = 0;

  constructor(
    private readonly around: Neighbourhood,
    private readonly options: AnnealOptions,
  ) {
    this.rematch = new Rematch(around);
  }

  /** Makes some thousands of steps; false when the run is over and nothing was done. */
  round(): boolean {
    const { cooling, stopping } = this.options;
    if (this.around.region.seats.length === 0) return false;
    const progress = stopping.progress(this.steps);
    if (progress >= 1 || stopping.isCancelled()) return false;
    const temperature = temperatureAt(cooling, progress);
    for (let i = 0; i < STEPS_PER_ROUND; i++) this.step(temperature);
    if (temperature < REMATCH_TEMPERATURE_MAX) this.rematchDays();
    this.steps += STEPS_PER_ROUND;
    return true;
  }

  /** Large neighbourhoods, solved rather than drawn from, once the slate has settled. */
  private rematchDays(): void {
    const { state } = this.around;
    const { best, afterMove } = this.options;
    for (let i = 0; i < REMATCHES_PER_ROUND; i++) {
      if (!this.rematch.improve(best)) continue;
      if (state.cost < best.cost - IMPROVEMENT_MIN) best.record(state.holders, state.cost, state.openCount);
      afterMove?.();
    }
  }

  private step(temperature: number): void {
    const { around, changes } = this;
    const { move, best, afterMove } = this.options;
    const { state } = around;
    changes.clear();
    if (!move(around, changes)) return;
    const limit = acceptanceLimit(temperature, around.random);
    const delta = state.evaluate(changes, limit);
    if (delta > limit) return;
    state.apply(changes, delta);
    best.noteChanges(changes);
    if (state.cost < best.cost - IMPROVEMENT_MIN) best.record(state.holders, state.cost, state.openCount);
    afterMove?.();
  }
}
