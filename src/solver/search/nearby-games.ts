import { type CompiledSlate } from '../compile/compiled-slate';
import { MINUTE_MS } from '../compile/facts';

/** Enough to hold the games of a busy gym on one day. */
const NEARBY_MAX = 24;
/** An hour between two games counts like this many kilometres of road. */
const KILOMETRES_PER_HOUR_APART = 4;

/**
 * For each game the games of the same day that are close in place and time: whoever works one of them
 * would go little out of their way for this one. Lists are made when first asked for.
 */
export class NearbyGames {
  private readonly lists: (Int32Array | undefined)[];

  constructor(private readonly slate: CompiledSlate) {
    this.lists = new Array<Int32Array | undefined>(slate.gameCount);
  }

  of(game: number): Int32Array {
    return (this.lists[game] ??= this.nearest(game));
  }

  private nearest(game: number): Int32Array {
    const { slate } = this;
    const day = slate.gameDay[game]!;
    const row = slate.gameVenue[game]! * slate.venueCount;
    const distances = new Map<number, number>();
    for (let other = slate.dayStart[day]!; other < slate.dayStart[day + 1]!; other++) {
      if (other === game) continue;
      const hours = Math.abs(slate.tipOffMs[other]! - slate.tipOffMs[game]!) / (60 * MINUTE_MS);
      const kilometres = slate.betweenVenues.metres[row + slate.gameVenue[other]!]! / 1000;
      distances.set(other, kilometres + KILOMETRES_PER_HOUR_APART * hours);
    }
    const nearest = [...distances.entries()].sort((a, b) => a[1] - b[1] || a[0] - b[0]).slice(0, NEARBY_MAX);
    return Int32Array.from(nearest, ([other]) => other);
  }
}
