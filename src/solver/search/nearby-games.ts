import { type CompiledSlate } from '../compile/compiled-slate';
import { MINUTE_MS } from '../compile/facts';

/** Enough to hold the games of a busy gym on one day. */
const NEARBY_MAX = 24;
/** Games looked at before the nearest are chosen; more, because time counts as well as place. */
const GATHERED_MIN = 3 * NEARBY_MAX;
/** An hour between two games counts like this many kilometres of road. */
const KILOMETRES_PER_HOUR_APART = 4;

/**
 * For each game the games of the same day that are close in place and time: whoever works one of them
 * would go little out of their way for this one. Lists are made when first asked for.
 */
export class NearbyGames {
  private readonly lists: (Int32Array | undefined)[];
  private readonly venuesByDistance: (Int32Array | undefined)[];
  /** By day and venue, the games, ascending. */
  private readonly gamesOfVenue = new Map<number, number[]>();

  constructor(private readonly slate: CompiledSlate) {
    this.lists = new Array<Int32Array | undefined>(slate.gameCount);
    this.venuesByDistance = new Array<Int32Array | undefined>(slate.venueCount);
    for (let game = 0; game < slate.gameCount; game++) {
      const key = slate.gameDay[game]! * slate.venueCount + slate.gameVenue[game]!;
      const games = this.gamesOfVenue.get(key);
      if (games === undefined) this.gamesOfVenue.set(key, [game]);
      else games.push(game);
    }
  }

  of(game: number): Int32Array {
    return (this.lists[game] ??= this.nearest(game));
  }

  private nearest(game: number): Int32Array {
    const { slate } = this;
    const row = slate.gameVenue[game]! * slate.venueCount;
    const gathered: { readonly game: number; readonly distance: number }[] = [];
    for (const venue of this.venuesFrom(slate.gameVenue[game]!)) {
      if (gathered.length >= GATHERED_MIN) break;
      const kilometres = slate.betweenVenues.metres[row + venue]! / 1000;
      for (const other of this.gamesOfVenue.get(slate.gameDay[game]! * slate.venueCount + venue) ?? []) {
        if (other === game) continue;
        const hours = Math.abs(slate.tipOffMs[other]! - slate.tipOffMs[game]!) / (60 * MINUTE_MS);
        gathered.push({ game: other, distance: kilometres + KILOMETRES_PER_HOUR_APART * hours });
      }
    }
    gathered.sort((a, b) => a.distance - b.distance || a.game - b.game);
    return Int32Array.from(gathered.slice(0, NEARBY_MAX), (near) => near.game);
  }

  private venuesFrom(venue: number): Int32Array {
    return (this.venuesByDistance[venue] ??= this.sortVenues(venue));
  }

  private sortVenues(from: number): Int32Array {
    const { slate } = this;
    const metres = (venue: number) => slate.betweenVenues.metres[from * slate.venueCount + venue]!;
    const venues = Int32Array.from({ length: slate.venueCount }, (_, venue) => venue);
    return venues.sort((a, b) => metres(a) - metres(b) || a - b);
  }
}
