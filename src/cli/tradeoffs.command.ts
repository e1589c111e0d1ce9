import { mkdir, writeFile } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { Command } from 'commander';
import { describeFault, readProblem, tradeOffs, type SlateProblem, type TradeOffProposal } from '../solver';
import { positiveNumber } from './number-options';
import { readJsonFile } from './read-json-file';
import { textTable } from './text-table';

/** What `tradeoffs` leaves as its exit code. */
export const TRADE_OFFS_EXIT = { answered: 0, badInput: 2 } as const;

interface TradeOffArguments {
  readonly seconds?: number;
  readonly out?: string;
  readonly json?: boolean;
}

const THREADS_MAX = 4;

/** The verb `tradeoffs`: a slate problem in, slates that weigh its concerns differently out. Needs no database. */
export function tradeOffsCommand(): Command {
  return new Command('tradeoffs')
    .description('find slates that trade driving against development against fairness')
    .argument('<problem>', 'problem file (slate-problem/1), may be gzipped')
    .option(
      '--seconds <n>',
      'time of one build; all in all it takes twice as long (default by size)',
      positiveNumber,
    )
    .option('--out <folder>', 'write each proposal there as an answer file (slate-answer/1)')
    .option('--json', 'the proposals as JSON, with every slate')
    .addHelpText(
      'after',
      "\nFigures are at the problem's own weights. Ctrl-C ends the search with what was found so far.\nExit codes: 0 answered, 2 bad input (also locks that break a rule).",
    )
    .action(async (file: string, options: TradeOffArguments) => {
      process.exitCode = await tradeOffsOfFile(file, options);
    });
}

async function tradeOffsOfFile(file: string, options: TradeOffArguments): Promise<number> {
  const document = await readJsonFile(file);
  if (!document.ok) return complain([document.message]);
  const read = readProblem(document.value);
  if (!read.ok)
    return complain([...read.faults.map(describeFault), `${read.faults.length} faults in ${file}`]);
  const interruption = new AbortController();
  const interrupt = () => interruption.abort();
  process.once('SIGINT', interrupt);
  process.once('SIGTERM', interrupt);
  const found = await tradeOffs(read.problem, {
    // The clock starts with the process, so that start-up counts as time spent.
    nowSeconds: () => performance.now() / 1000,
    startedAtSeconds: 0,
    threads: Math.min(THREADS_MAX, availableParallelism()),
    signal: interruption.signal,
    ...(options.seconds === undefined ? {} : { seconds: options.seconds }),
  });
  if (!found.ok)
    return complain(found.lockViolations.map(({ rule, message }) => `locks break ${rule}: ${message}`));
  const { proposals } = found;
  if (options.out !== undefined) await writeAnswers(read.problem, proposals, options.out);
  process.stdout.write(
    options.json === true ? `${JSON.stringify(proposals)}\n` : `${proposalTable(proposals)}\n`,
  );
  return TRADE_OFFS_EXIT.answered;
}

async function writeAnswers(
  problem: SlateProblem,
  proposals: readonly TradeOffProposal[],
  folder: string,
): Promise<void> {
  await mkdir(folder, { recursive: true });
  for (const [index, { assignments, cost, emphasis }] of proposals.entries()) {
    const answer = {
      format: 'slate-answer/1',
      problem: problem.name,
      assignments,
      cost,
      bound: null,
      seconds: 0,
      status: 'feasible',
      meta: { emphasis },
    };
    await writeFile(join(folder, `proposal-${index + 1}.json`), `${JSON.stringify(answer)}\n`);
  }
}

function proposalTable(proposals: readonly TradeOffProposal[]): string {
  const header = ['', 'driving', 'development', 'fairness', 'open', 'total', 'searched with weights times'];
  const rows = proposals.map(({ isBase, cost, emphasis }, index) => [
    `${index + 1}${isBase ? ' as weighted' : ''}`,
    cost.travel.toFixed(1),
    (cost.pairing + cost.overLevel).toFixed(1),
    cost.balance.toFixed(1),
    cost.open.toFixed(0),
    cost.total.toFixed(1),
    [emphasis.driving, emphasis.development, emphasis.fairness]
      .map((factor) => factor.toFixed(2))
      .join(' / '),
  ]);
  return textTable(header, rows);
}

function complain(lines: readonly string[]): number {
  process.stderr.write(`${lines.join('\n')}\n`);
  return TRADE_OFFS_EXIT.badInput;
}
