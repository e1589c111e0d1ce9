import { Command, Option } from 'commander';
import {
  explainOpenSeat,
  explainSeat,
  findRemedies,
  reoptimiseSeat,
  seatIndex,
  type PresentSlate,
  type SeatName,
} from '../solver';
import {
  candidateLines,
  openSeatText,
  remediesText,
  reoptimisedText,
  seatName,
  seatText,
} from './explain-text';
import { readSlateFiles } from './read-slate-files';
import { countOption } from './number-options';

/** What `explain` leaves as its exit code. */
export const EXPLAIN_EXIT = { answered: 0, badInput: 2 } as const;

interface ExplainArguments {
  readonly game: string;
  readonly seat: SeatName;
  readonly official?: string;
  readonly reoptimise?: boolean;
  readonly remedies?: boolean;
  readonly steps: number;
  readonly json?: boolean;
}

/** The verb `explain`: why this official and not another, why a seat is open, what would fill it. Needs no database. */
export function explainCommand(): Command {
  return new Command('explain')
    .description('say why a seat is held by one official and not another, or why it is open')
    .argument('<problem>', 'problem file (slate-problem/1), may be gzipped')
    .argument('<answer>', 'answer file (slate-answer/1), legal or not, may be gzipped')
    .requiredOption('--game <id>', 'the game')
    .addOption(new Option('--seat <seat>', 'the seat').choices(['chief', 'umpire']).makeOptionMandatory())
    .option('--official <id>', 'only this official')
    .option('--reoptimise', 'with --official: put them there and solve again around them')
    .option('--remedies', 'for an open seat: the smallest changes that fill it, each solved again')
    .option('--steps <n>', 'steps of search each time something is solved again', countOption, 60_000)
    .option('--json', 'as JSON')
    .addHelpText('after', '\nExit codes: 0 answered, 2 bad input.')
    .action(async (problemFile: string, answerFile: string, options: ExplainArguments) => {
      const files = await readSlateFiles(problemFile, answerFile);
      const result = files.ok ? explain(files.present, options) : { ok: false as const, lines: files.lines };
      if (!result.ok) for (const line of result.lines) process.stderr.write(`${line}\n`);
      else process.stdout.write(`${result.text}\n`);
      process.exitCode = result.ok ? EXPLAIN_EXIT.answered : EXPLAIN_EXIT.badInput;
    });
}

type Result =
  { readonly ok: true; readonly text: string } | { readonly ok: false; readonly lines: readonly string[] };

function explain(present: PresentSlate, options: ExplainArguments): Result {
  const { slate, holders, problem } = present;
  const place = { game: options.game, seat: options.seat };
  const seat = seatIndex(slate, place);
  if (seat === null) return { ok: false, lines: [`--game: there is no game ${options.game} in the problem`] };
  const official = options.official === undefined ? null : slate.officialIds.indexOf(options.official);
  if (official === -1)
    return { ok: false, lines: [`--official: there is no official ${options.official} in the problem`] };
  if (options.reoptimise === true && official === null)
    return { ok: false, lines: ['--reoptimise: say around whom with --official'] };

  const explanation = explainSeat(slate, holders, seat);
  const candidates = explanation.candidates.filter(
    (candidate) => options.official === undefined || candidate.official === options.official,
  );
  const open = explainOpenSeat(slate, holders, seat);
  if (options.remedies === true && open === null)
    return {
      ok: false,
      lines: [`--remedies: ${seatName(place)} is held by ${explanation.holder?.official ?? ''}`],
    };
  const { steps } = options;
  const reoptimised =
    options.reoptimise === true && official !== null
      ? reoptimiseSeat(present, { seat, official }, { steps })
      : null;
  const remedies =
    options.remedies === true && open?.kind !== 'kept-open' ? findRemedies(present, seat, { steps }) : null;
  if (options.json === true) {
    const document = { ...explanation, candidates, open, reoptimised, remedies };
    return { ok: true, text: JSON.stringify(document) };
  }
  const about =
    options.official === undefined
      ? seatText(explanation)
      : [
          seatText({ ...explanation, candidates: [] }),
          ...candidates.flatMap((candidate) => candidateLines(candidate, place)),
        ].join('\n');
  const parts = [about];
  if (open !== null) parts.push(openSeatText(open, problem.timeZone));
  if (reoptimised !== null) parts.push(reoptimisedText(reoptimised, place, options.official!));
  if (remedies !== null) parts.push(remediesText(remedies, problem.timeZone));
  return { ok: true, text: parts.join('\n\n') };
}
