import { Command } from 'commander';
import startHighs, { type Highs } from 'highs';
import {
  studyFragility,
  type Fragility,
  type ReservePlan,
  type SeatFragility,
  type Withdrawal,
} from '../solver';
import { seatName, signed } from './explain-text';
import { readSlateFiles } from './read-slate-files';
import { textTable } from './text-table';
import { positiveNumber, countOption } from './number-options';

/** What `fragility` leaves as its exit code. */
export const FRAGILITY_EXIT = { answered: 0, badInput: 2 } as const;

interface FragilityArguments {
  readonly seconds: number;
  readonly steps?: number;
  readonly json?: boolean;
}

/** The verb `fragility`: what a slate hangs on. Needs no database. */
export function fragilityCommand(): Command {
  return new Command('fragility')
    .description('say which seats and officials a slate hangs on, and which reserves would cover it')
    .argument('<problem>', 'problem file (slate-problem/1), may be gzipped')
    .argument('<answer>', 'answer file (slate-answer/1) with a legal slate, may be gzipped')
    .option('--seconds <n>', 'time for solving the slate without each official in turn', positiveNumber, 60)
    .option(
      '--steps <n>',
      'steps of search for each official instead of a time: the same result on every machine',
      countOption,
    )
    .option('--json', 'as JSON')
    .addHelpText('after', '\nExit codes: 0 answered, 2 bad input or an illegal slate.')
    .action(async (problemFile: string, answerFile: string, options: FragilityArguments) => {
      process.exitCode = await report(problemFile, answerFile, options);
    });
}

async function report(problemFile: string, answerFile: string, options: FragilityArguments): Promise<number> {
  const files = await readSlateFiles(problemFile, answerFile);
  if (!files.ok) {
    for (const line of files.lines) process.stderr.write(`${line}\n`);
    return FRAGILITY_EXIT.badInput;
  }
  let highs: Promise<Highs> | undefined;
  const fragility = await studyFragility(files.present, {
    nowSeconds: () => performance.now() / 1000,
    ...(options.steps === undefined ? { seconds: options.seconds } : { steps: options.steps }),
    // Compiling the linear solver takes a moment; large slates do without it.
    loadHighs: () => (highs ??= startHighs()),
  });
  if (fragility.kind === 'illegal') {
    for (const { rule, game, officials, message } of fragility.violations) {
      process.stderr.write(
        `the slate breaks ${rule}${game === null ? '' : ` at game ${game}`} (${officials.join(', ')}): ${message}\n`,
      );
    }
    return FRAGILITY_EXIT.badInput;
  }
  process.stdout.write(`${options.json === true ? JSON.stringify(fragility) : fragilityText(fragility)}\n`);
  return FRAGILITY_EXIT.answered;
}

function fragilityText({
  seats,
  reserves,
  withdrawals,
}: Extract<Fragility, { readonly kind: 'studied' }>): string {
  return [seatsText(seats), reservesText(reserves), withdrawalsText(withdrawals)].join('\n\n');
}

/** Seats that few could take, the worst first. */
const FEW = 3;

function seatsText(seats: readonly SeatFragility[]): string {
  const few = seats
    .filter(({ alone }) => alone.length < FEW)
    .sort((a, b) => a.alone.length - b.alone.length || a.withOneMore.length - b.withOneMore.length);
  const rest = `${seats.length - few.length} of ${seats.length} seats have ${FEW} stand-ins or more.`;
  if (few.length === 0) return rest;
  const rows = few.map(({ place, holder, alone, withOneMore }) => [
    seatName(place),
    holder ?? 'OPEN',
    String(alone.length),
    String(withOneMore.length),
  ]);
  return `${textTable(['Seat', 'Held by', 'Stand-ins', 'With one more change'], rows)}\n${rest}`;
}

function reservesText({ reserves, uncovered, atLeast }: ReservePlan): string {
  if (reserves.length === 0 && uncovered.length === 0)
    return 'Every filled seat has a stand-in; no reserve is needed.';
  const proof = atLeast === reserves.length ? 'the fewest possible' : `at least ${atLeast} are needed`;
  const lines = [`Reserves for seats without a stand-in: ${reserves.length} (${proof})`];
  for (const { official, covers } of reserves) {
    lines.push(`  ${official}`);
    for (const { place, way } of covers) {
      lines.push(
        way.kind === 'keeps-free'
          ? `    ${seatName(place)}: if asked to keep ${way.moreMinutes} more minutes free`
          : `    ${seatName(place)}: giving up ${seatName(way.gives)}, which ${way.to} takes`,
      );
    }
  }
  if (uncovered.length > 0) lines.push(`  Nobody could take: ${uncovered.map(seatName).join(', ')}`);
  return lines.join('\n');
}

function withdrawalsText(withdrawals: readonly Withdrawal[]): string {
  const working = withdrawals.filter(({ seatsHeld }) => seatsHeld > 0);
  const rows = working.map(({ official, seatsHeld, moreOpenSeats, change, cost, bound, proven, moves }) => [
    official,
    String(seatsHeld),
    moreOpenSeats > 0 ? `+${moreOpenSeats}` : String(moreOpenSeats),
    signed(change.total),
    proven
      ? 'proven'
      : bound === null
        ? 'nothing proven'
        : `at most ${(cost.total - bound).toFixed(1)} too dear`,
    String(Math.max(0, moves.length - seatsHeld)),
  ]);
  const idle = withdrawals.length - working.length;
  const table = textTable(
    ['If they withdraw', 'Seats', 'Open seats', 'Cost', 'Proof', 'Other seats changed'],
    rows,
  );
  return `${table}\n${idle} officials hold no seat and would change nothing.`;
}
