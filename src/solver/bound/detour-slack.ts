import { type CompiledSlate } from '../compile';
import { MINUTE_MS } from '../compile/facts';
import { type TravelTable } from '../travel';

/** Rounding three estimated ways to whole metres can break the triangle inequality by this much. */
const ROUNDING_METRES = 2;

type Way = { readonly minutes: number; readonly metres: number };

/**
 * By how many metres leaving one game out of a tour of each official could lengthen it at most, or `Infinity`
 * when leaving a game out could even make a tour of theirs impossible.
 *
 * Pricing drops stops that can never pay, and its exactness rests on these figures being upper limits.
 * Estimated ways obey the triangle inequality but for rounding; so only triples of places with a measured
 * leg among their three ways are looked at. The duty at the game left out is at least `shortestDuty` long,
 * which leaves that much time to spare on the direct way. Two games at one venue may ask for a longer gap
 * than it takes to work another game elsewhere in between; then none is left out.
 */
export function detourSlackMetres(slate: CompiledSlate): Float64Array {
  const { venueCount: venues, betweenVenues: between, outward, homeward } = slate;
  const shortestDuty = shortestDutyMinutes(slate);
  const lost = (direct: Way, first: Way, second: Way): number =>
    direct.minutes > first.minutes + second.minutes + shortestDuty
      ? Infinity
      : direct.metres - first.metres - second.metres;
  const way = (table: TravelTable, entry: number): Way => ({
    minutes: table.minutes[entry]!,
    metres: table.metres[entry]!,
  });
  const amongVenues = (from: number, to: number): Way => way(between, from * venues + to);

  let everywhere = gapOutlastsAnOuting(slate, shortestDuty) ? Infinity : ROUNDING_METRES;
  for (const entry of between.measured) {
    const from = Math.floor(entry / venues);
    const to = entry % venues;
    const leg = way(between, entry);
    for (let other = 0; other < venues; other++) {
      everywhere = Math.max(
        everywhere,
        lost(leg, amongVenues(from, other), amongVenues(other, to)),
        lost(amongVenues(from, other), leg, amongVenues(to, other)),
        lost(amongVenues(other, to), amongVenues(other, from), leg),
      );
    }
  }
  const slack = new Float64Array(slate.officialCount).fill(everywhere);
  const raise = (official: number, metres: number): void => {
    slack[official] = Math.max(slack[official]!, metres);
  };
  for (const entry of between.measured) {
    const from = Math.floor(entry / venues);
    const to = entry % venues;
    const leg = way(between, entry);
    for (let official = 0; official < slate.officialCount; official++) {
      const home = official * venues;
      raise(official, lost(way(outward, home + to), way(outward, home + from), leg));
      raise(official, lost(way(homeward, home + from), leg, way(homeward, home + to)));
    }
  }
  for (const entry of outward.measured) {
    const official = Math.floor(entry / venues);
    const venue = entry % venues;
    for (let other = 0; other < venues; other++) {
      const otherWay = way(outward, official * venues + other);
      raise(official, lost(way(outward, entry), otherWay, amongVenues(other, venue)));
      raise(official, lost(otherWay, way(outward, entry), amongVenues(venue, other)));
    }
  }
  for (const entry of homeward.measured) {
    const official = Math.floor(entry / venues);
    const venue = entry % venues;
    for (let other = 0; other < venues; other++) {
      const otherWay = way(homeward, official * venues + other);
      raise(official, lost(way(homeward, entry), amongVenues(venue, other), otherWay));
      raise(official, lost(otherWay, amongVenues(other, venue), way(homeward, entry)));
    }
  }
  return slack;
}

/** Whether an official may work elsewhere between two games at one venue that are too close to follow each other. */
function gapOutlastsAnOuting(slate: CompiledSlate, shortestDuty: number): boolean {
  const { venueCount: venues, betweenVenues } = slate;
  const onTheRoad = slate.sameVenueGapMinutes - slate.wrapUpMinutes - slate.arrivalLeadMinutes - shortestDuty;
  if (onTheRoad <= 0) return false;
  for (let from = 0; from < venues; from++) {
    for (let to = 0; to < venues; to++) {
      if (from === to) continue;
      const minutes = betweenVenues.minutes[from * venues + to]! + betweenVenues.minutes[to * venues + from]!;
      if (minutes < onTheRoad) return true;
    }
  }
  return false;
}

function shortestDutyMinutes(slate: CompiledSlate): number {
  let shortest = Infinity;
  for (let game = 0; game < slate.gameCount; game++)
    shortest = Math.min(shortest, (slate.dutyToMs[game]! - slate.dutyFromMs[game]!) / MINUTE_MS);
  return shortest;
}
