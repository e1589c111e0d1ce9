import startHighs from 'highs';
import { checkAnswer, solveSlate, type SlateAnswer, type SlateProblem } from '../../src/solver';
import { arcFlowOf } from '../support/solver/arc-flow';
import { loadInstance, type InstanceSource } from './instances';
import { type RunNews } from './trace';

/** One run, in a process of its own so that its time and memory are its own. */
export interface Task {
  readonly method: 'crewloom' | 'highs';
  readonly instance: InstanceSource;
  readonly seconds: number;
  readonly seed: number;
  readonly threads: number;
}

/** Since the process started: loading the program is part of every time. */
const nowSeconds = () => performance.now() / 1000;
const tell = (news: RunNews) => process.send?.(news);

async function main(task: Task): Promise<void> {
  const problem = loadInstance(task.instance);
  const answer =
    task.method === 'crewloom' ? await runCrewloom(problem, task) : await runHighs(problem, task);
  // HiGHS may end without a slate.
  if (answer === null) return;
  const report = checkAnswer(problem, answer);
  if (report.cost === null || report.violations.length > 0)
    throw new Error(`${task.instance.name}: ${task.method} gave no legal slate`);
  const { total, open } = report.cost;
  const { seconds, bound } = answer;
  tell({ point: { seconds, cost: total, bound } });
  tell({
    end: {
      seconds,
      total,
      open,
      bound,
      proven: answer.status === 'optimal',
      peakMegabytes: process.resourceUsage().maxRSS / 1024,
    },
  });
}

function runCrewloom(problem: SlateProblem, { seconds, seed, threads }: Task): Promise<SlateAnswer> {
  return solveSlate(problem, {
    nowSeconds,
    startedAtSeconds: 0,
    seconds,
    seed,
    threads,
    onProgress: ({ seconds: at, cost, bound }) => tell({ point: { seconds: at, cost, bound } }),
  });
}

async function runHighs(problem: SlateProblem, { seconds }: Task): Promise<SlateAnswer | null> {
  const { program, crewsOf } = arcFlowOf(problem);
  const highs = await startHighs();
  const builtAt = nowSeconds();
  const { cost, bound, proven, values } = program.solve(highs, {
    seconds: Math.max(1, seconds - builtAt),
    onBetter: (at) => tell({ point: { ...at, seconds: builtAt + at.seconds } }),
  });
  if (cost === null) return null;
  const answer: SlateAnswer = {
    format: 'slate-answer/1',
    problem: problem.name,
    assignments: crewsOf(values),
    cost: {
      total: cost,
      open: 0,
      pairing: 0,
      travel: 0,
      balance: 0,
      teamRepeat: 0,
      partnerRepeat: 0,
      overLevel: 0,
      reluctant: 0,
      change: 0,
    },
    bound,
    seconds: nowSeconds(),
    status: proven ? 'optimal' : 'feasible',
  };
  return answer;
}

main(JSON.parse(process.argv[2] ?? 'null') as Task).then(
  () => process.disconnect?.(),
  (error: unknown) => {
    console.error(error);
    process.exitCode = 1;
    process.disconnect?.();
  },
);
