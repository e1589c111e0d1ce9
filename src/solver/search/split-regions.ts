import { type CompiledSlate } from '../compile/compiled-slate';
import { NOBODY, SEAT_FREE } from '../compile/facts';
import { type SeededRandom } from '../random';
import { type Holders } from '../tours';
import { type Region } from './moves/neighbourhood';

/**
 * Cuts a slate into regions that threads can search at the same time: venues by strips of the map across
 * a random direction, games with their venue, officials with most of their possible games. A seat held
 * by somebody of another region stays as it is for the time being, so that no tour and no crew is touched
 * from two sides: gains in the regions simply add up.
 */
export function splitRegions(
  slate: CompiledSlate,
  holders: Holders,
  parts: number,
  random: SeededRandom,
): readonly Region[] {
  const partOfVenue = cutVenues(slate, parts, random);
  const partOfOfficial = assignOfficials(slate, partOfVenue, parts);
  return Array.from({ length: parts }, (_, part) => {
    const isSeatMovable = new Uint8Array(2 * slate.gameCount);
    const seats: number[] = [];
    for (let seat = 0; seat < 2 * slate.gameCount; seat++) {
      const holder = holders[seat]!;
      if (slate.seatLock[seat] !== SEAT_FREE || partOfVenue[slate.gameVenue[seat >> 1]!] !== part) continue;
      if (holder !== NOBODY && partOfOfficial[holder] !== part) continue;
      isSeatMovable[seat] = 1;
      seats.push(seat);
    }
    const isOfficialMovable = Uint8Array.from(partOfOfficial, (own) => (own === part ? 1 : 0));
    return { seats: Int32Array.from(seats), isSeatMovable, isOfficialMovable };
  });
}

/** Strips with about as many games each, at a random angle and with a random offset. */
function cutVenues(slate: CompiledSlate, parts: number, random: SeededRandom): Int32Array {
  const angle = random.unit() * 2 * Math.PI;
  const along = (venue: number) =>
    Math.cos(angle) * slate.venueX[venue]! + Math.sin(angle) * slate.venueY[venue]!;
  const order = Int32Array.from({ length: slate.venueCount }, (_, venue) => venue);
  order.sort((a, b) => along(a) - along(b) || a - b);
  const games = new Int32Array(slate.venueCount);
  for (const venue of slate.gameVenue) games[venue]!++;
  const partOfVenue = new Int32Array(slate.venueCount);
  // The first strip's border moves from cut to cut, so that no pair of venues is always apart.
  const offset = (random.unit() - 0.5) * 0.3;
  let before = 0;
  for (const venue of order) {
    const share = (before + games[venue]! / 2) / slate.gameCount;
    partOfVenue[venue] = Math.min(parts - 1, Math.max(0, Math.floor(share * parts + offset)));
    before += games[venue]!;
  }
  return partOfVenue;
}

function assignOfficials(slate: CompiledSlate, partOfVenue: Int32Array, parts: number): Int32Array {
  const { start, values } = slate.gamesOfOfficial;
  const partOfOfficial = new Int32Array(slate.officialCount);
  const counts = new Int32Array(parts);
  for (let official = 0; official < slate.officialCount; official++) {
    counts.fill(0);
    for (let i = start[official]!; i < start[official + 1]!; i++) {
      const game = values[i]!;
      counts[partOfVenue[slate.gameVenue[game]!]!]!++;
    }
    partOfOfficial[official] = counts.indexOf(Math.max(...counts));
  }
  return partOfOfficial;
}
