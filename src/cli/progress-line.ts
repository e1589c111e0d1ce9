import { type SlateAnswer, type SolveProgress } from '../solver';

/** Where progress is written; a terminal can rewrite its line. */
export interface ProgressOutput {
  readonly isTTY?: boolean;
  write(text: string): unknown;
}

/** One live line on a terminal, a line a second anywhere else, nothing when quiet. */
export class ProgressLine {
  private lastShownSecond = -1;

  constructor(
    private readonly output: ProgressOutput,
    private readonly quiet: boolean,
  ) {}

  show(progress: SolveProgress): void {
    if (this.quiet) return;
    const text = describeProgress(progress);
    if (this.output.isTTY === true) {
      this.output.write(`\r\u001b[K${text}`);
      return;
    }
    const second = Math.floor(progress.seconds);
    if (second === this.lastShownSecond) return;
    this.lastShownSecond = second;
    this.output.write(`${text}\n`);
  }

  finish(answer: SlateAnswer): void {
    if (this.quiet || answer.status === 'infeasible') return;
    if (this.output.isTTY === true) this.output.write('\r\u001b[K');
    const seats = 2 * answer.assignments.length;
    const filled = answer.assignments.reduce(
      (sum, { chief, umpire }) => sum + (chief ? 1 : 0) + (umpire ? 1 : 0),
      0,
    );
    const proof =
      answer.status === 'optimal' ? 'proven optimal' : describeBound(answer.cost.total, answer.bound);
    const cost = answer.cost.total.toFixed(1);
    this.output.write(
      `${filled} of ${seats} seats filled, cost ${cost}, ${proof}, ${answer.seconds.toFixed(1)} s\n`,
    );
  }
}

export function describeProgress({ seconds, cost, openSeats, bound }: SolveProgress): string {
  const open = openSeats === 1 ? '1 open seat' : `${openSeats} open seats`;
  return `${seconds.toFixed(1)} s  cost ${cost.toFixed(1)}  ${open}  ${describeBound(cost, bound)}`;
}

function describeBound(cost: number, bound: number | null): string {
  if (bound === null) return 'no bound yet';
  const gapPercent = (100 * (cost - bound)) / Math.max(1, Math.abs(cost));
  return `bound ${bound.toFixed(1)} (gap ${gapPercent.toFixed(2)} %)`;
}
