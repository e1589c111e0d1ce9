import { type CompiledSlate } from '../compile/compiled-slate';
import { FIT_CHIEF, FIT_UMPIRE } from '../compile/fit-bits';

/** Whether the official could hold the seat, the rest of the slate left aside (H1, H2, H5, H7). */
export function isPossible(slate: CompiledSlate, official: number, seat: number): boolean {
  const bit = (seat & 1) === 0 ? FIT_CHIEF : FIT_UMPIRE;
  return (slate.fit[official * slate.gameCount + (seat >> 1)]! & bit) !== 0;
}

/** Who could hold each seat by `isPossible`, ascending; lists are made when first asked for. */
export class PossibleHolders {
  private readonly lists: (Int32Array | undefined)[];

  constructor(private readonly slate: CompiledSlate) {
    this.lists = new Array<Int32Array | undefined>(2 * slate.gameCount);
  }

  of(seat: number): Int32Array {
    return (this.lists[seat] ??= this.listFor(seat));
  }

  private listFor(seat: number): Int32Array {
    const { slate } = this;
    const lock = slate.seatLock[seat]!;
    if (lock >= 0) return Int32Array.of(lock);
    const { start, values } = slate.officialsOfGame;
    return values
      .slice(start[seat >> 1], start[(seat >> 1) + 1])
      .filter((official) => isPossible(slate, official, seat));
  }
}
