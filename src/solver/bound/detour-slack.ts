import { type CompiledSlate } from '../compile';
import { MINUTE_MS } from '../compile/facts';

/** Whole-metre rounding of three estimated ways can break the triangle inequality by this much. */
const ROUNDING_METRES = 2;
const TRIPLES_MAX = 40_000_000;

/**
 * By how many metres leaving one game out of a tour could lengthen it at most, or `Infinity` when leaving
 * a game out could even make the tour impossible (measured legs need not obey the triangle inequality), or
 * when there are too many ways to look at them all.
 *
 * Pricing uses it to drop stops that can never pay: exactness rests on this figure being an upper limit.
 */
export function detourSlackMetres(slate: CompiledSlate): number {
  if (!slate.hasMeasuredLegs) return ROUNDING_METRES;
  const { venueCount: venues, officialCount: officials } = slate;
  if (venues * venues * (venues + 2 * officials) > TRIPLES_MAX) return Infinity;
  const between = slate.betweenVenues;
  const shortestDuty = shortestDutyMinutes(slate);
  let slack = ROUNDING_METRES;
  for (let via = 0; via < venues; via++) {
    for (let from = 0; from < venues; from++) {
      const first = from * venues + via;
      for (let to = 0; to < venues; to++) {
        const direct = from * venues + to;
        const second = via * venues + to;
        slack = Math.max(slack, between.metres[direct]! - between.metres[first]! - between.metres[second]!);
        const minutes = between.minutes[first]! + between.minutes[second]! + shortestDuty;
        if (between.minutes[direct]! > minutes) return Infinity;
      }
      // Coming from home, and going home, by way of `via` against the way straight to `from`.
      const back = via * venues + from;
      for (let official = 0; official < officials; official++) {
        const straight = official * venues + from;
        const around = official * venues + via;
        const out = slate.outward;
        const home = slate.homeward;
        slack = Math.max(slack, out.metres[straight]! - out.metres[around]! - between.metres[back]!);
        slack = Math.max(slack, home.metres[straight]! - between.metres[first]! - home.metres[around]!);
        if (out.minutes[straight]! > out.minutes[around]! + between.minutes[back]! + shortestDuty) return Infinity;
        if (home.minutes[straight]! > between.minutes[first]! + home.minutes[around]! + shortestDuty) return Infinity;
      }
    }
  }
  return slack;
}

function shortestDutyMinutes(slate: CompiledSlate): number {
  let shortest = Infinity;
  for (let game = 0; game < slate.gameCount; game++)
    shortest = Math.min(shortest, (slate.dutyToMs[game]! - slate.dutyFromMs[game]!) / MINUTE_MS);
  return shortest;
}
