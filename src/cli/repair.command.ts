import { Command } from 'commander';
import {
  checkAnswer,
  describeFault,
  readEvents,
  readProblem,
  repairSlate,
  type Fault,
  type SlateAnswer,
} from '../solver';
import { positiveNumber } from './number-options';
import { readJsonFile } from './read-json-file';
import { repairText } from './repair-text';

/** What `repair` leaves as its exit code. */
export const REPAIR_EXIT = { answered: 0, badInput: 2 } as const;

interface RepairArguments {
  readonly seconds?: number;
  readonly json?: boolean;
}

const EVENTS_HELP = `
What happened is a JSON file of format slate-events/1; the events are taken in their order:
  { "format": "slate-events/1", "events": [
    { "kind": "officialOut", "official": "o-1", "from"?: instant, "to"?: instant },
    { "kind": "gameMoved", "game": "g-1", "tipOff": instant, "durationMinutes"?: 75 },
    { "kind": "venueChanged", "game": "g-1", "venue": "place-2" },
    { "kind": "gameCancelled", "game": "g-2" },
    { "kind": "gameAdded", "game": { a game as in the problem file, without "published" } },
    { "kind": "limitsChanged", "official": "o-1", "limits": { "maxGames"?: 3, "maxGamesPerDay"?, "maxHomeMinutes"?,
      "available"?, "reluctant"?, "avoidTeams"?, "avoidVenues"?, "avoidOfficials"? } },
    { "kind": "placeAdded", "place": { "id": "place-9", "lat": 46.1, "lon": 9.2 } }
  ] }
Instants are ISO 8601 with an offset or Z. Without "from" and "to" the official is out altogether.

Repairs are listed with the fewest seats left open first, then the fewest people disturbed, then the lowest cost.
Exit codes: 0 answered, 2 bad input (also locks that cannot be kept any more).`;

/** The verb `repair`: a published slate and what happened in, ways to mend it out. Needs no database. */
export function repairCommand(): Command {
  return new Command('repair')
    .description('mend a published slate after a withdrawal or another change, with the fewest phone calls')
    .argument('<problem>', 'problem file (slate-problem/1), may be gzipped')
    .argument('<answer>', 'the published slate (slate-answer/1), may be gzipped')
    .argument('<events>', 'what happened (slate-events/1), may be gzipped')
    .option(
      '--seconds <n>',
      'report what was found after so long (default: no limit but the work itself)',
      positiveNumber,
    )
    .option('--json', 'the whole report as JSON, with every slate')
    .addHelpText('after', EVENTS_HELP)
    .action(async (problem: string, answer: string, events: string, options: RepairArguments) => {
      process.exitCode = await repairFiles({ problem, answer, events }, options);
    });
}

interface RepairFiles {
  readonly problem: string;
  readonly answer: string;
  readonly events: string;
}

async function repairFiles(files: RepairFiles, options: RepairArguments): Promise<number> {
  const documents = await Promise.all([files.problem, files.answer, files.events].map(readJsonFile));
  for (const file of documents) if (!file.ok) process.stderr.write(`${file.message}\n`);
  const [problem, answer, events] = documents.map((file) => (file.ok ? { value: file.value } : null));
  if (!problem || !answer || !events) return REPAIR_EXIT.badInput;
  const read = readProblem(problem.value);
  if (!read.ok) return refuse(files.problem, read.faults);
  // An answer that breaks rules can be mended too; one that is none, or has no seats, cannot.
  const { faults } = checkAnswer(read.problem, answer.value);
  if (faults.length > 0) return refuse(files.answer, faults);
  const { status, assignments } = answer.value as SlateAnswer;
  if (status === 'infeasible') return complain(`${files.answer}: is infeasible and holds no slate to mend`);
  const happened = readEvents(events.value, read.problem);
  if (!happened.ok) return refuse(files.events, happened.faults);

  const nowSeconds = () => performance.now() / 1000;
  const { seconds } = options;
  const outcome = await repairSlate(read.problem, assignments, happened.events, {
    // The clock starts with the process, so that reading the files counts as time spent.
    ...(seconds === undefined ? {} : { clock: { nowSeconds, seconds: seconds - nowSeconds() } }),
  });
  if (!outcome.ok) {
    const words = outcome.lockViolations.map(
      ({ rule, game, message }) => `  ${rule} ${game ?? ''}: ${message}`,
    );
    return complain(['locks cannot be kept any more:', ...words].join('\n'));
  }
  process.stdout.write(options.json === true ? `${JSON.stringify(outcome)}\n` : repairText(outcome));
  return REPAIR_EXIT.answered;
}

function refuse(file: string, faults: readonly Fault[]): number {
  for (const fault of faults) process.stderr.write(`${describeFault(fault)}\n`);
  return complain(`${faults.length} ${faults.length === 1 ? 'fault' : 'faults'} in ${file}`);
}

function complain(message: string): number {
  process.stderr.write(`${message}\n`);
  return REPAIR_EXIT.badInput;
}
