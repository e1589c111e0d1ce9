import type { Official, SlateProblem } from '../../../src/solver';

// Read off the format's definition for the plain model alone, so that it shares nothing with what it checks.

/** Own entries only. */
export function countOf(counts: Readonly<Record<string, number>> | undefined, id: string): number {
  return counts !== undefined && Object.hasOwn(counts, id) ? counts[id]! : 0;
}

/** Windows that touch or overlap are one. */
export function merged(windows: Official['available']): readonly (readonly [number, number])[] {
  const sorted = windows
    .map(({ from, to }) => [Date.parse(from), Date.parse(to)] as const)
    .sort((a, b) => a[0] - b[0]);
  return sorted.reduce<(readonly [number, number])[]>((list, [from, to]) => {
    const last = list.at(-1);
    if (last === undefined || from > last[1]) return [...list, [from, to]];
    return [...list.slice(0, -1), [last[0], Math.max(last[1], to)]];
  }, []);
}

/** Minutes and metres from place to place. */
export function waysOf({ travel, places }: SlateProblem) {
  const legs = new Map(travel.legs?.map((leg) => [JSON.stringify([leg.from, leg.to]), leg]));
  const byId = new Map(places.map((place) => [place.id, place]));
  const sinHalfSquared = (degrees: number) => Math.sin((degrees * Math.PI) / 360) ** 2;
  const cosine = (degrees: number) => Math.cos((degrees * Math.PI) / 180);
  return (from: string, to: string): { minutes: number; metres: number } => {
    if (from === to) return { minutes: 0, metres: 0 };
    const leg = legs.get(JSON.stringify([from, to])) ?? legs.get(JSON.stringify([to, from]));
    if (leg !== undefined) return leg;
    const [a, b] = [byId.get(from)!, byId.get(to)!];
    const h = sinHalfSquared(b.lat - a.lat) + cosine(a.lat) * cosine(b.lat) * sinHalfSquared(b.lon - a.lon);
    const metres = Math.floor(travel.circuity * 2 * 6_371_008.8 * Math.asin(Math.min(1, Math.sqrt(h))) + 0.5);
    return { metres, minutes: travel.fixedMinutes + Math.ceil((metres * 60) / (1000 * travel.speedKmh)) };
  };
}
