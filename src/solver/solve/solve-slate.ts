import { type SlateAnswer } from '../answer';
import { compileSlate, type CompiledSlate } from '../compile';
import { NOBODY, SEAT_KEPT_OPEN } from '../compile/facts';
import { priceSlate } from '../costs/price-slate';
import { type SlateProblem } from '../problem';
import { ControlBlock } from '../search/control-block';
import { planSearch } from '../search/search-plan';
import { SearchRun } from '../search/search-run';
import { InlineThread, WorkerThread, type SearchThread, type ThreadSetting } from '../search/search-thread';
import { startSlate } from '../search/start-slate';
import { type StintLength } from '../search/stint';
import { type Holders } from '../tours';
import { ProgressWatch } from './progress-watch';
import { defaultSeconds, type SolveOptions } from './solve-options';
import { writeAnswer, writeRefusal } from './write-answer';

/**
 * Looks for the cheapest legal slate of a problem that `readProblem` accepted, for as long as the options
 * allow. Locks that cannot be kept legally are an answer of status `infeasible`, not an error.
 */
export async function solveSlate(problem: SlateProblem, options: SolveOptions): Promise<SlateAnswer> {
  const startedAtSeconds = options.startedAtSeconds ?? options.nowSeconds();
  const elapsedSeconds = () => options.nowSeconds() - startedAtSeconds;
  const slate = compileSlate(problem);
  const start = startSlate(slate);
  if (!start.ok) return writeRefusal(problem, start.violations, elapsedSeconds());

  const threadCount = Math.max(1, Math.floor(options.threads ?? 1));
  const seed = options.seed ?? 1;
  const control = new ControlBlock(undefined, threadCount);
  const watch = new ProgressWatch(control, threadCount, elapsedSeconds, options);
  const threads = startThreads(threadCount, { slate, control, seed }, watch);
  try {
    const run = new SearchRun(
      {
        slate,
        threads,
        seed,
        priceOf: (holders) => priceSlate(slate, holders).total,
        lengthOf: lengthOfShares(options, slate, elapsedSeconds),
        isOver: () => control.isCancelled,
        onRound: (best, current, gainsAddUp) =>
          watch.beginRound({
            bestCost: best.cost,
            bestOpenSeats: countOpenSeats(slate, best.holders),
            startCost: current.cost,
            startOpenSeats: countOpenSeats(slate, current.holders),
            gainsAddUp,
          }),
      },
      { holders: start.holders, cost: start.cost },
    );
    await run.run(planSearch({ games: slate.gameCount, threads: threadCount, openSeats: start.openSeats }));
    return writeAnswer(problem, slate, run.best.holders, { bound: null, seconds: elapsedSeconds() });
  } finally {
    watch.stop();
    await Promise.all(threads.map((thread) => thread.close()));
  }
}

/** What is left to do after the search, in seconds: pricing and writing the answer. */
function finishingSeconds(slate: CompiledSlate): number {
  return 0.05 + slate.gameCount * 5e-5;
}

/** How long to search to get from one share of the run to another. */
function lengthOfShares(
  { steps, seconds }: SolveOptions,
  slate: CompiledSlate,
  elapsedSeconds: () => number,
): (fromShare: number, toShare: number) => StintLength {
  if (steps !== undefined) {
    return (fromShare, toShare) => ({ steps: Math.round(steps * toShare) - Math.round(steps * fromShare) });
  }
  const begin = elapsedSeconds();
  const end = (seconds ?? defaultSeconds(slate.gameCount)) - finishingSeconds(slate);
  return (_fromShare, toShare) => ({ endSeconds: begin + (end - begin) * toShare });
}

function startThreads(
  count: number,
  setting: Omit<ThreadSetting, 'thread'>,
  watch: ProgressWatch,
): readonly SearchThread[] {
  if (count === 1) return [new InlineThread({ ...setting, thread: 0 }, () => watch.tick())];
  return Array.from({ length: count }, (_, thread) => new WorkerThread({ ...setting, thread }));
}

function countOpenSeats(slate: CompiledSlate, holders: Holders): number {
  return holders.reduce(
    (open, holder, seat) => open + (holder === NOBODY && slate.seatLock[seat] !== SEAT_KEPT_OPEN ? 1 : 0),
    0,
  );
}
