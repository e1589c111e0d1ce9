import { type CompiledSlate } from '../compile/compiled-slate';
import { SeededRandom } from '../random';
import { type Holders } from '../tours';
import { coolingOfRound, type Cycle } from './search-plan';
import { type SearchThread } from './search-thread';
import { splitRegions } from './split-regions';
import { type StintLength, type StintResult } from './stint';
import { type Region } from './moves/neighbourhood';

/** A slate and its cost. */
export interface PricedHolders {
  readonly holders: Holders;
  readonly cost: number;
}

export interface SearchRunOptions {
  readonly slate: CompiledSlate;
  readonly threads: readonly SearchThread[];
  readonly seed: number;
  readonly priceOf: (holders: Holders) => number;
  /** The length of a round that takes the run from one share of its whole to another. */
  readonly lengthOf: (fromShare: number, toShare: number) => StintLength;
  /** The run should end before its time. */
  readonly isOver: () => boolean;
  /** Told at the beginning of each round what it starts from and whether the threads' gains will add up. */
  readonly onRound: (best: PricedHolders, current: PricedHolders, gainsAddUp: boolean) => void;
}

/** A stream of random numbers that no thread uses. */
const COORDINATOR_STREAM = 1_000_003;

/** Carries out a plan: hands out stints, joins what comes back, keeps the best slate ever seen. */
export class SearchRun {
  private readonly random: SeededRandom;
  private current: PricedHolders;
  best: PricedHolders;

  constructor(
    private readonly options: SearchRunOptions,
    start: PricedHolders,
  ) {
    this.random = new SeededRandom(options.seed, COORDINATOR_STREAM);
    this.current = start;
    this.best = start;
  }

  async run(plan: readonly Cycle[]): Promise<void> {
    let share = 0;
    for (const cycle of plan) {
      for (let round = 0; round < cycle.rounds; round++) {
        if (this.options.isOver()) return;
        const nextShare = share + cycle.share / cycle.rounds;
        await this.round(cycle, round, this.options.lengthOf(share, nextShare));
        share = nextShare;
      }
      this.current = this.best;
    }
  }

  private async round(cycle: Cycle, round: number, length: StintLength): Promise<void> {
    const { threads, slate, onRound } = this.options;
    const { holders } = this.current;
    const regions: readonly (Region | null)[] = cycle.split
      ? splitRegions(slate, holders, threads.length, this.random)
      : threads.map(() => null);
    onRound(this.best, this.current, cycle.split);
    const cooling = coolingOfRound(cycle, round);
    const results = await Promise.all(
      threads.map((thread, index) => thread.run({ holders, region: regions[index]!, cooling, length })),
    );
    if (cycle.split) this.join(results, regions);
    else this.choose(results);
  }

  /** Regions do not touch, so that the seats of each are simply taken over. */
  private join(results: readonly StintResult[], regions: readonly (Region | null)[]): void {
    const current = this.current.holders.slice();
    const best = this.current.holders.slice();
    results.forEach((result, index) => {
      for (const seat of regions[index]!.seats) {
        current[seat] = result.current[seat]!;
        best[seat] = result.best[seat]!;
      }
    });
    this.current = { holders: current, cost: this.options.priceOf(current) };
    this.keep(best);
  }

  private choose(results: readonly StintResult[]): void {
    const winner = results.reduce((best, result) => (result.bestCost < best.bestCost ? result : best));
    this.current = { holders: winner.current, cost: this.options.priceOf(winner.current) };
    this.keep(winner.best);
  }

  private keep(holders: Holders): void {
    const cost = this.options.priceOf(holders);
    if (cost < this.best.cost) this.best = { holders, cost };
  }
}
