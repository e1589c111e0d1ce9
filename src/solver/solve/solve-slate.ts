import { type SlateAnswer } from '../answer';
import { compileSlate, type CompiledSlate } from '../compile';
import { NOBODY, SEAT_KEPT_OPEN } from '../compile/facts';
import { priceSlate } from '../costs/price-slate';
import { type SlateProblem } from '../problem';
import { ControlBlock } from '../search/control-block';
import { planSearch, STEPS_PER_SECOND } from '../search/search-plan';
import { SearchRun } from '../search/search-run';
import { InlineThread, WorkerThread, type SearchThread, type ThreadSetting } from '../search/search-thread';
import { startSlate } from '../search/start-slate';
import { type StintLength } from '../search/stint';
import { type Holders } from '../tours';
import { type ProverSetting } from '../prove/prover-messages';
import { ProgressWatch } from './progress-watch';
import { Proof } from './proof';
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

  const seed = options.seed ?? 1;
  const threadCount = Math.max(1, Math.floor(options.threads ?? 1));
  const division = divideThreads(threadCount, slate.gameCount, options);
  const control = new ControlBlock(undefined, division.searchThreads);
  const watch = new ProgressWatch(control, division.searchThreads, elapsedSeconds, options);
  const threads = startThreads(division.searchThreads, { slate, control, seed }, watch);
  const lengthOf = lengthOfShares(options, slate, elapsedSeconds, division.searchShare);
  const proof = new Proof({ slate, control, searchThreads: division.searchThreads, watch }, start);
  try {
    const length = proofLength(options, slate);
    const secondsLeft = () =>
      'endSeconds' in length ? Math.max(0, length.endSeconds - elapsedSeconds()) : 0;
    if (division.proofBegins !== null) proof.startAfter(division.proofBegins * secondsLeft(), length);
    const run = new SearchRun(
      {
        slate,
        threads,
        seed,
        priceOf: (holders) => priceSlate(slate, holders).total,
        lengthOf,
        isOver: () => control.isCancelled,
        onRound: (best, current, gainsAddUp) => {
          proof.tellBetter(best);
          watch.beginRound({
            bestCost: best.cost,
            bestOpenSeats: countOpenSeats(slate, best.holders),
            startCost: current.cost,
            startOpenSeats: countOpenSeats(slate, current.holders),
            gainsAddUp,
          });
        },
      },
      { holders: start.holders, cost: start.cost },
    );
    await run.run(
      planSearch({
        games: slate.gameCount,
        threads: division.searchThreads,
        openSeats: start.openSeats,
        steps: division.searchThreads * stepsPerThread(options, slate),
      }),
    );
    proof.tellBetter(run.best);
    if (division.proofBegins === null && !control.isCancelled) proof.start(length);
    const { holders, bound } = await proof.finish();
    return writeAnswer(problem, slate, holders, { bound, seconds: elapsedSeconds() });
  } finally {
    watch.stop();
    await Promise.all([proof.close(), ...threads.map((thread) => thread.close())]);
  }
}

/** Up to here a slate can be proven optimal, and the proof has a thread to itself from the beginning. */
const PROVABLE_GAMES_MAX = 60;
/** A bound rises fastest towards a good slate, and the search needs the machine first. */
const PROOF_BEGINS_SHARE = 0.4;

interface Division {
  readonly searchThreads: number;
  /** Share of the time after which the search ends. */
  readonly searchShare: number;
  /** Share of the time after which the proof begins beside the search; null: it follows the search. */
  readonly proofBegins: number | null;
}

/**
 * With one thread, or counted steps, the proof follows the search. Otherwise it goes on beside it: in a
 * thread of its own where it can prove the optimum, else late and in an extra thread.
 */
function divideThreads(threads: number, games: number, { steps }: SolveOptions): Division {
  if (steps !== undefined) return { searchThreads: threads, searchShare: 1, proofBegins: null };
  if (threads === 1) return { searchThreads: 1, searchShare: 0.5, proofBegins: null };
  if (games <= PROVABLE_GAMES_MAX) return { searchThreads: threads - 1, searchShare: 1, proofBegins: 0 };
  return { searchThreads: threads, searchShare: 1, proofBegins: PROOF_BEGINS_SHARE };
}

/** Price steps of a run that counts steps: enough for a good bound, in proportion to the search. */
function priceStepsFor(steps: number): number {
  return Math.max(50, Math.min(3000, Math.round(steps / 500)));
}

function proofLength(options: SolveOptions, slate: CompiledSlate): ProverSetting['length'] {
  if (options.steps !== undefined) return { priceSteps: priceStepsFor(options.steps) };
  return { endSeconds: (options.seconds ?? defaultSeconds(slate.gameCount)) - finishingSeconds(slate) };
}

function stepsPerThread({ steps, seconds }: SolveOptions, slate: CompiledSlate): number {
  return steps ?? (seconds ?? defaultSeconds(slate.gameCount)) * STEPS_PER_SECOND;
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
  searchShare: number,
): (fromShare: number, toShare: number) => StintLength {
  if (steps !== undefined) {
    return (fromShare, toShare) => ({ steps: Math.round(steps * toShare) - Math.round(steps * fromShare) });
  }
  const begin = elapsedSeconds();
  const end = (seconds ?? defaultSeconds(slate.gameCount)) - finishingSeconds(slate);
  return (_fromShare, toShare) => ({ endSeconds: begin + (end - begin) * searchShare * toShare });
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
