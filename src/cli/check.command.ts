import { Command } from 'commander';
import { checkAnswer, describeFault, readProblem, type CheckReport, type Fault } from '../solver';
import { readJsonFile } from './read-json-file';

/** What `check` leaves as its exit code. */
export const CHECK_EXIT = { sound: 0, unsound: 1, badInput: 2 } as const;

/** The verb `check`: whether an answer is legal, priced as stated, and claims nothing that is not so. */
export function checkCommand(): Command {
  return new Command('check')
    .description('judge a slate answer against its problem, independently of the solver')
    .argument('<problem>', 'problem file (slate-problem/1), may be gzipped')
    .argument('<answer>', 'answer file (slate-answer/1), may be gzipped')
    .addHelpText('after', '\nExit codes: 0 sound, 1 broken rules or wrong figures, 2 bad input.')
    .action(async (problemFile: string, answerFile: string) => {
      process.exitCode = await checkFiles(problemFile, answerFile);
    });
}

async function checkFiles(problemFile: string, answerFile: string): Promise<number> {
  const [problem, answer] = await Promise.all([readJsonFile(problemFile), readJsonFile(answerFile)]);
  for (const file of [problem, answer]) if (!file.ok) process.stderr.write(`${file.message}\n`);
  if (!problem.ok || !answer.ok) return CHECK_EXIT.badInput;
  const read = readProblem(problem.value);
  if (!read.ok) return refuse(problemFile, read.faults);
  const report = checkAnswer(read.problem, answer.value);
  if (report.faults.length > 0) return refuse(answerFile, report.faults);
  process.stdout.write(describeReport(report));
  return report.ok ? CHECK_EXIT.sound : CHECK_EXIT.unsound;
}

function refuse(file: string, faults: readonly Fault[]): number {
  for (const fault of faults) process.stderr.write(`${describeFault(fault)}\n`);
  process.stderr.write(`${faults.length} ${faults.length === 1 ? 'fault' : 'faults'} in ${file}\n`);
  return CHECK_EXIT.badInput;
}

function describeReport({ ok, violations, mismatches, cost, seats }: CheckReport): string {
  const lines = violations.map(({ rule, game, officials, message }) =>
    [rule, game === null ? '' : ` game ${game}`, ` (${officials.join(', ')})`, `: ${message}`].join(''),
  );
  lines.push(...mismatches);
  if (seats !== null) lines.push(`${seats.filled} seats filled, ${seats.open} open`);
  if (cost !== null)
    for (const [term, amount] of Object.entries(cost)) lines.push(`${term.padEnd(14)}${amount.toFixed(2)}`);
  lines.push(ok ? 'sound' : 'not sound');
  return `${lines.join('\n')}\n`;
}
