import {
  checkAnswer,
  describeFault,
  presentSlate,
  readProblem,
  type PresentSlate,
  type SlateAnswer,
} from '../solver';
import { readJsonFile } from './read-json-file';

export type SlateFiles =
  | { readonly ok: true; readonly present: PresentSlate }
  /** A line for each fault. */
  | { readonly ok: false; readonly lines: readonly string[] };

/** Reads a problem and an answer to it; the slate may be illegal, the files may not. */
export async function readSlateFiles(problemFile: string, answerFile: string): Promise<SlateFiles> {
  const [problem, answer] = await Promise.all([readJsonFile(problemFile), readJsonFile(answerFile)]);
  if (!problem.ok || !answer.ok) {
    return { ok: false, lines: [problem, answer].flatMap((file) => (file.ok ? [] : [file.message])) };
  }
  const read = readProblem(problem.value);
  if (!read.ok)
    return { ok: false, lines: read.faults.map((fault) => `${problemFile}: ${describeFault(fault)}`) };
  const { faults } = checkAnswer(read.problem, answer.value);
  if (faults.length > 0)
    return { ok: false, lines: faults.map((fault) => `${answerFile}: ${describeFault(fault)}`) };
  const { status, assignments } = answer.value as SlateAnswer;
  if (status === 'infeasible')
    return { ok: false, lines: [`${answerFile}: says that there is no slate (infeasible)`] };
  return { ok: true, present: presentSlate(read.problem, assignments) };
}
