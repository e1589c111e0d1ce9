import { availableParallelism } from 'node:os';
import { writeFile } from 'node:fs/promises';
import { Command, InvalidArgumentError } from 'commander';
import {
  defaultSeconds,
  describeFault,
  readProblem,
  solveSlate,
  type SlateAnswer,
  type SlateProblem,
} from '../solver';
import { readJsonFile } from './read-json-file';
import { ProgressLine } from './progress-line';
import { positiveNumber, wholeNumber } from './number-options';

/** What `solve` leaves as its exit code. */
export const SOLVE_EXIT = { answered: 0, badInput: 2, illegalLocks: 3 } as const;

interface SolveArguments {
  readonly out?: string;
  readonly seconds?: number;
  readonly steps?: number;
  readonly seed: number;
  readonly threads: number;
  readonly quiet?: boolean;
}

const THREADS_DEFAULT_MAX = 4;

/** The verb `solve`: a slate problem in, a slate answer out. Needs no database. */
export function solveCommand(): Command {
  return new Command('solve')
    .description('find the best legal crews for a slate problem file (slate-problem/1)')
    .argument('<problem>', 'problem file, JSON, may be gzipped')
    .option('--out <file>', 'write the answer (slate-answer/1) here instead of standard output')
    .option('--seconds <n>', 'time allowed, start-up included (default by size: 10 to 300)', positiveNumber)
    .option(
      '--steps <n>',
      'steps of search for each thread instead of a time: the same answer on every machine',
      wholeNumber,
    )
    .option('--seed <n>', 'seed of the random choices', wholeNumber, 1)
    .option(
      '--threads <n>',
      'worker threads',
      threadCount,
      Math.min(THREADS_DEFAULT_MAX, availableParallelism()),
    )
    .option('--quiet', 'no progress on standard error')
    .addHelpText(
      'after',
      '\nCtrl-C ends the search and gives the best slate so far.\nExit codes: 0 answered, 2 bad input, 3 locks that break a rule.',
    )
    .action(async (file: string, options: SolveArguments) => {
      process.exitCode = await solveFile(file, options);
    });
}

async function solveFile(file: string, options: SolveArguments): Promise<number> {
  const document = await readJsonFile(file);
  if (!document.ok) {
    process.stderr.write(`${document.message}\n`);
    return SOLVE_EXIT.badInput;
  }
  const read = readProblem(document.value);
  if (!read.ok) {
    for (const fault of read.faults) process.stderr.write(`${describeFault(fault)}\n`);
    process.stderr.write(
      `${read.faults.length} ${read.faults.length === 1 ? 'fault' : 'faults'} in ${file}\n`,
    );
    return SOLVE_EXIT.badInput;
  }
  const answer = await solveWithProgress(read.problem, options);
  const text = `${JSON.stringify(answer)}\n`;
  if (options.out === undefined) process.stdout.write(text);
  else await writeFile(options.out, text);
  if (answer.status !== 'infeasible') return SOLVE_EXIT.answered;
  for (const { rule, game, message } of answer.lockViolations ?? []) {
    process.stderr.write(`locks break ${rule}${game === null ? '' : ` at game ${game}`}: ${message}\n`);
  }
  return SOLVE_EXIT.illegalLocks;
}

async function solveWithProgress(problem: SlateProblem, options: SolveArguments): Promise<SlateAnswer> {
  const interruption = new AbortController();
  const interrupt = () => interruption.abort();
  process.once('SIGINT', interrupt);
  process.once('SIGTERM', interrupt);
  const line = new ProgressLine(process.stderr, options.quiet === true);
  try {
    const { seconds = defaultSeconds(problem.games.length), steps, seed, threads } = options;
    const answer = await solveSlate(problem, {
      // This clock starts with the process, so that start-up counts as time spent.
      nowSeconds: () => performance.now() / 1000,
      startedAtSeconds: 0,
      ...(steps === undefined ? { seconds } : { steps }),
      seed,
      threads,
      signal: interruption.signal,
      onProgress: (progress) => line.show(progress),
    });
    line.finish(answer);
    return answer;
  } finally {
    process.off('SIGINT', interrupt);
    process.off('SIGTERM', interrupt);
  }
}

function threadCount(text: string): number {
  const value = wholeNumber(text);
  if (value < 1 || value > 64) throw new InvalidArgumentError('give a number from 1 to 64');
  return value;
}
