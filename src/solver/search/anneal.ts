import { acceptanceLimit, temperatureAt, type CoolingSchedule } from './acceptance';
import { type BestSlate } from './best-slate';
import { ChangeList } from './change-list';
import { type Move, type Neighbourhood } from './moves/neighbourhood';
import { type Stopping } from './stopping';

/** Between two looks at temperature, time and cancellation; a few hundredths of a second at most. */
const STEPS_PER_ROUND = 4096;
/** A record has to be better by more than rounding. */
const IMPROVEMENT_MIN = 1e-7;

export interface AnnealOptions {
  readonly move: Move;
  readonly cooling: CoolingSchedule;
  readonly stopping: Stopping;
  /** Updated whenever the run finds a cheaper slate. */
  readonly best: BestSlate;
  /** Called after each accepted move; assertion mode hangs here. */
  readonly afterMove?: (changes: ChangeList, delta: number) => void;
  /** Called after each round of steps with the steps done so far. */
  readonly afterRound?: (stepsDone: number) => void;
}

/** The decision loop: propose, price, accept or not, until told to stop. Returns the steps made. */
export function anneal(around: Neighbourhood, options: AnnealOptions): number {
  const { state, random } = around;
  const { move, cooling, stopping, best, afterMove, afterRound } = options;
  const changes = new ChangeList();
  let steps = 0;
  if (around.region.seats.length === 0) return 0;
  for (;;) {
    const progress = stopping.progress(steps);
    if (progress >= 1 || stopping.isCancelled()) return steps;
    const temperature = temperatureAt(cooling, progress);
    for (let i = 0; i < STEPS_PER_ROUND; i++) {
      changes.clear();
      if (!move(around, changes)) continue;
      const limit = acceptanceLimit(temperature, random);
      const delta = state.evaluate(changes, limit);
      if (delta > limit) continue;
      state.apply(changes, delta);
      best.noteChanges(changes);
      afterMove?.(changes, delta);
      if (state.cost < best.cost - IMPROVEMENT_MIN) best.record(state.holders, state.cost);
    }
    steps += STEPS_PER_ROUND;
    afterRound?.(steps);
  }
}
