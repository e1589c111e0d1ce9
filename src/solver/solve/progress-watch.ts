import { type ControlBlock } from '../search/control-block';
import { type SolveOptions } from './solve-options';

const TICK_MS = 20;
const REPORT_SECONDS = 0.2;

/** The best slate when a round begins, and what its threads set out from. */
export interface RoundStart {
  readonly bestCost: number;
  readonly bestOpenSeats: number;
  readonly startCost: number;
  readonly startOpenSeats: number;
  /** Threads search parts of the slate, so that their gains add up; otherwise the best of them counts. */
  readonly gainsAddUp: boolean;
}

/** Keeps the threads' clock going, passes on cancellation, and tells the caller how the run stands. */
export class ProgressWatch {
  private round: RoundStart | null = null;
  private bound: number | null = null;
  private reportedAtSeconds = -Infinity;
  private readonly timer: NodeJS.Timeout;

  constructor(
    private readonly control: ControlBlock,
    private readonly threads: number,
    private readonly elapsedSeconds: () => number,
    private readonly options: SolveOptions,
  ) {
    this.timer = setInterval(() => this.tick(), TICK_MS);
    this.tick();
  }

  beginRound(round: RoundStart): void {
    this.round = round;
    for (let thread = 0; thread < this.threads; thread++) {
      this.control.report(thread, round.startCost, round.startOpenSeats);
    }
    this.tick();
  }

  noteBound(bound: number): void {
    this.bound = Math.max(bound, this.bound ?? -Infinity);
  }

  tick(): void {
    const seconds = this.elapsedSeconds();
    this.control.nowSeconds = seconds;
    if (this.options.signal?.aborted === true) this.control.cancel();
    const { onProgress } = this.options;
    if (onProgress === undefined || this.round === null || seconds - this.reportedAtSeconds < REPORT_SECONDS)
      return;
    this.reportedAtSeconds = seconds;
    onProgress({ seconds, ...this.best(this.round), bound: this.bound });
  }

  stop(): void {
    clearInterval(this.timer);
  }

  private best(round: RoundStart): { readonly cost: number; readonly openSeats: number } {
    let cost = round.bestCost;
    let openSeats = round.bestOpenSeats;
    let joinedCost = round.startCost;
    let joinedOpenSeats = round.startOpenSeats;
    for (let thread = 0; thread < this.threads; thread++) {
      const threadCost = this.control.bestCost(thread);
      joinedCost += threadCost - round.startCost;
      joinedOpenSeats += this.control.openSeats(thread) - round.startOpenSeats;
      if (!round.gainsAddUp && threadCost < cost) {
        cost = threadCost;
        openSeats = this.control.openSeats(thread);
      }
    }
    if (round.gainsAddUp && joinedCost < cost) return { cost: joinedCost, openSeats: joinedOpenSeats };
    return { cost, openSeats };
  }
}
