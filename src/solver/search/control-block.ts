/**
 * The few numbers that the threads of one run share: the coordinator's clock and its wish to stop, and how
 * far each thread has come. Threads have no clock of their own.
 */
export class ControlBlock {
  readonly memory: SharedArrayBuffer;
  private readonly flags: Int32Array;
  private readonly figures: Float64Array;

  constructor(memory?: SharedArrayBuffer, threads = 0) {
    this.memory = memory ?? new SharedArrayBuffer(FLAG_BYTES + 8 * (1 + FIGURES_PER_THREAD * threads));
    this.flags = new Int32Array(this.memory, 0, 1);
    this.figures = new Float64Array(this.memory, FLAG_BYTES);
  }

  get isCancelled(): boolean {
    return Atomics.load(this.flags, 0) === 1;
  }

  cancel(): void {
    Atomics.store(this.flags, 0, 1);
  }

  /** Seconds on the coordinator's clock, a few hundredths late. */
  get nowSeconds(): number {
    return this.figures[0]!;
  }

  set nowSeconds(seconds: number) {
    this.figures[0] = seconds;
  }

  /** The cheapest slate of the thread's present stint and its open seats. */
  report(thread: number, bestCost: number, openSeats: number): void {
    this.figures[1 + FIGURES_PER_THREAD * thread] = bestCost;
    this.figures[2 + FIGURES_PER_THREAD * thread] = openSeats;
  }

  bestCost(thread: number): number {
    return this.figures[1 + FIGURES_PER_THREAD * thread]!;
  }

  openSeats(thread: number): number {
    return this.figures[2 + FIGURES_PER_THREAD * thread]!;
  }
}

const FLAG_BYTES = 8;
const FIGURES_PER_THREAD = 2;
