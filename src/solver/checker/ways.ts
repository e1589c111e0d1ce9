import { type SlateProblem } from '../problem';

const MEAN_EARTH_RADIUS_METRES = 6371008.8;

/** Minutes and metres from one place to another, by id. */
export type Ways = (from: string, to: string) => { readonly minutes: number; readonly metres: number };

/** Written from the format's definition alone, like everything of the checker. */
export function waysOf(problem: SlateProblem): Ways {
  const { circuity, speedKmh, fixedMinutes } = problem.travel;
  const placeById = new Map(problem.places.map((place) => [place.id, place]));
  const key = (from: string, to: string) => JSON.stringify([from, to]);
  const measured = new Map(problem.travel.legs?.map((leg) => [key(leg.from, leg.to), leg]));
  return (from, to) => {
    if (from === to) return { minutes: 0, metres: 0 };
    const leg =
      measured.size === 0 ? undefined : (measured.get(key(from, to)) ?? measured.get(key(to, from)));
    if (leg !== undefined) return leg;
    const a = placeById.get(from)!;
    const b = placeById.get(to)!;
    const toRadians = Math.PI / 180;
    const halfLat = Math.sin(((b.lat - a.lat) * toRadians) / 2);
    const halfLon = Math.sin(((b.lon - a.lon) * toRadians) / 2);
    const h = halfLat ** 2 + Math.cos(a.lat * toRadians) * Math.cos(b.lat * toRadians) * halfLon ** 2;
    const metres = Math.floor(
      circuity * 2 * MEAN_EARTH_RADIUS_METRES * Math.asin(Math.min(1, Math.sqrt(h))) + 0.5,
    );
    return { metres, minutes: fixedMinutes + Math.ceil((metres * 60) / (1000 * speedKmh)) };
  };
}
