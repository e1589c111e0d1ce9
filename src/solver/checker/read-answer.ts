import { COST_TERMS, type SlateAnswer } from '../answer';
import { type SlateProblem } from '../problem';
import { FaultList, type Fault } from '../read/faults';
import { FieldReader } from '../read/fields';

const SHAPE = {
  required: ['format', 'problem', 'assignments', 'cost', 'bound', 'seconds', 'status'],
  optional: ['lockViolations', 'meta'],
};
const STATUSES = ['optimal', 'feasible', 'infeasible'];

export type ReadAnswerResult =
  | { readonly ok: true; readonly answer: SlateAnswer }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** Judges a parsed JSON document as a `slate-answer/1` to this problem and reports all its faults at once. */
export function readAnswer(document: unknown, problem: SlateProblem): ReadAnswerResult {
  const list = new FaultList();
  const read = new FieldReader(list);
  const root = read.object(document, '', SHAPE);
  if (root === undefined) return { ok: false, faults: list.faults };
  if (root['format'] !== 'slate-answer/1') {
    list.add('format', root['format'], 'must be "slate-answer/1"', 'Set "format" to "slate-answer/1".');
  }
  if (root['problem'] !== problem.name) {
    list.add(
      'problem',
      root['problem'],
      `must be the problem's name ${JSON.stringify(problem.name)}`,
      'Check the answer against its own problem.',
    );
  }
  if (!STATUSES.includes(root['status'] as string)) {
    list.add('status', root['status'], `must be one of ${STATUSES.join(', ')}`, 'Correct the status.');
  }
  read.number(root['seconds'], 'seconds', { min: 0 });
  if (root['bound'] !== null) read.number(root['bound'], 'bound');
  // The seats and the price of an infeasible answer mean nothing.
  if (root['status'] !== 'infeasible') {
    readAssignments(root['assignments'], problem, read, list);
    const cost = read.object(root['cost'], 'cost', { required: ['total', ...COST_TERMS] });
    for (const [term, amount] of Object.entries(cost ?? {})) read.number(amount, `cost.${term}`);
  }
  if (list.faults.length > 0) return { ok: false, faults: list.faults };
  return { ok: true, answer: document as SlateAnswer };
}

function readAssignments(value: unknown, problem: SlateProblem, read: FieldReader, list: FaultList): void {
  const gameIds = new Set(problem.games.map((game) => game.id));
  const officialIds = new Set(problem.officials.map((official) => official.id));
  const seen = new Set<unknown>();
  read.array(value, 'assignments')?.forEach((item, index) => {
    const at = `assignments[${index}]`;
    const assignment = read.object(item, at, { required: ['game', 'chief', 'umpire'] });
    if (assignment === undefined) return;
    read.reference(assignment['game'], `${at}.game`, gameIds, 'game');
    if (seen.has(assignment['game']))
      list.add(`${at}.game`, assignment['game'], 'is listed twice', 'List every game once.');
    seen.add(assignment['game']);
    for (const seat of ['chief', 'umpire']) {
      if (assignment[seat] !== null)
        read.reference(assignment[seat], `${at}.${seat}`, officialIds, 'official');
    }
  });
  const missing = [...gameIds].filter((id) => !seen.has(id));
  for (const id of missing)
    list.add('assignments', id, 'is a game that is not listed', 'List every game once.');
}
