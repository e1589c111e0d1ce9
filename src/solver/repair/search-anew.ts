import { type CompiledSlate } from '../compile/compiled-slate';
import { ControlBlock } from '../search/control-block';
import { StintRunner } from '../search/stint';
import { type Holders } from '../tours';

/** Warm enough to move a few people, too cool to deal the slate anew; in cost units. */
const COOLING = { hot: 10, cold: 0.4 };

export interface AnewOptions {
  readonly steps: number;
  readonly seed: number;
  readonly isStopped: () => boolean;
  readonly pause: () => Promise<void>;
}

/** Searches the whole slate for a cheaper one than the given, the price of changes included; the given one when there is none. */
export async function searchAnew(
  slate: CompiledSlate,
  start: Holders,
  options: AnewOptions,
): Promise<Holders> {
  const control = new ControlBlock(undefined, 1);
  const run = new StintRunner(slate, control, 0, options.seed).run({
    holders: start,
    region: null,
    cooling: COOLING,
    length: { steps: options.steps },
  });
  for (;;) {
    const step = run.next();
    if (step.done === true) return step.value.best;
    if (options.isStopped()) control.cancel();
    await options.pause();
  }
}
