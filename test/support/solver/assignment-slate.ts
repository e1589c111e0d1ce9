import { gunzipSync } from 'node:zlib';
import type { SlateProblem } from '../../../src/solver';
import { aGame, anOfficial, aProblem } from './slate-builder';

/** Costs row by row, from a gzipped file of OR-Library's assignment format: the size, then all costs. */
export function readAssignment(gzipped: Uint8Array): readonly (readonly number[])[] {
  const [size = 0, ...costs] = gunzipSync(gzipped).toString('ascii').trim().split(/\s+/).map(Number);
  if (costs.length !== size * size) throw new Error(`${costs.length} costs for ${size} rows`);
  return Array.from({ length: size }, (_, row) => costs.slice(row * size, (row + 1) * size));
}

/**
 * An assignment problem as a slate: row r is an official who works one game, column c a game at a gym of its
 * own, all at one instant and with the umpire's seat kept open on purpose. The way from home to the gym and
 * back is measured so that a kilometre's price makes it cost exactly the entry of the matrix.
 */
export function assignmentSlate(name: string, costs: readonly (readonly number[])[]): SlateProblem {
  const places = costs.flatMap((_, i) => [
    { id: `home ${i}`, lat: 45, lon: 8 },
    { id: `gym ${i}`, lat: 45, lon: 8 },
  ]);
  const legs = costs.flatMap((row, official) =>
    row.map((cost, game) => ({
      from: `home ${official}`,
      to: `gym ${game}`,
      minutes: 1,
      metres: 500 * cost,
    })),
  );
  return aProblem({
    officials: costs.map((_, i) => anOfficial(`official ${i}`, { home: `home ${i}`, maxGames: 1 })),
    games: costs.map((_, i) =>
      aGame(`game ${i}`, '2026-03-07T15:00:00Z', { venue: `gym ${i}`, locked: { umpire: null } }),
    ),
    weights: { openSeat: 10_000, travelPerKm: 1 },
    own: { name, places, travel: { circuity: 1.3, speedKmh: 60, fixedMinutes: 4, legs } },
  });
}
