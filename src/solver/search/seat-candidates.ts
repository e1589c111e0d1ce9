import { type CompiledSlate } from '../compile/compiled-slate';
import { FIT_CHIEF, FIT_UMPIRE } from '../compile/fit-bits';
import { balanceCost } from '../costs/balance';
import { type SeededRandom } from '../random';
import { changeCost } from '../costs/change';
import { soloCost } from './crew';

/**
 * Who could take each seat, cheapest first by what can be said without knowing the rest of the slate:
 * their own cost in the seat, the way there and back, and how far they are below their target. Lists are
 * made when first asked for.
 */
export class SeatCandidates {
  private readonly lists: (Int32Array | undefined)[];

  constructor(private readonly slate: CompiledSlate) {
    this.lists = new Array<Int32Array | undefined>(2 * slate.gameCount);
  }

  of(seat: number): Int32Array {
    return (this.lists[seat] ??= this.sortedCandidates(seat));
  }

  /** Draws one, the cheap ones far more often; −1 when nobody could take the seat. */
  draw(seat: number, random: SeededRandom): number {
    const list = this.of(seat);
    if (list.length === 0) return -1;
    const u = random.unit();
    return list[Math.floor(list.length * u * u * u)]!;
  }

  private sortedCandidates(seat: number): Int32Array {
    const { slate } = this;
    const game = seat >> 1;
    const bit = (seat & 1) === 0 ? FIT_CHIEF : FIT_UMPIRE;
    const { start, values } = slate.officialsOfGame;
    const officials: number[] = [];
    for (let i = start[game]!; i < start[game + 1]!; i++) {
      const official = values[i]!;
      if ((slate.fit[official * slate.gameCount + game]! & bit) !== 0) officials.push(official);
    }
    const estimates = new Map(officials.map((official) => [official, this.estimate(official, seat)]));
    officials.sort((a, b) => estimates.get(a)! - estimates.get(b)! || a - b);
    return Int32Array.from(officials);
  }

  private estimate(official: number, seat: number): number {
    const { slate } = this;
    const way = official * slate.venueCount + slate.gameVenue[seat >> 1]!;
    const metres = slate.outward.metres[way]! + slate.homeward.metres[way]!;
    return (
      soloCost(slate, official, seat) +
      changeCost(slate, seat, official) +
      (slate.weights.travelPerKm * metres) / 1000 +
      balanceCost(slate, official, 2) -
      balanceCost(slate, official, 1)
    );
  }
}
