import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { describeFault, readProblem, type SlateProblem } from '../../src/solver';
import { randomSlate } from '../support/solver/random-slate';

/** Where a benchmark's problem comes from; small enough to hand to another process. */
export type InstanceSource =
  | { readonly kind: 'generated'; readonly name: string; readonly games: number; readonly seed: number }
  | { readonly kind: 'file'; readonly name: string; readonly path: string };

const SIZES = { S: [24, 32, 40], M: [200], L: [1000] } as const;
export type Size = keyof typeof SIZES;

export function isSize(text: string): text is Size {
  return Object.hasOwn(SIZES, text);
}

/** The project's own instances of these sizes, all of one seed. */
export function generatedInstances(sizes: readonly Size[], seed: number): InstanceSource[] {
  return sizes.flatMap((size) => SIZES[size].map((games) => generated(`${size}-${games}`, games, seed)));
}

export function generated(name: string, games: number, seed: number): InstanceSource {
  return { kind: 'generated', name, games, seed };
}

/** Every `.json` and `.json.gz` of a folder, by name. */
export function instancesIn(folder: string): InstanceSource[] {
  return readdirSync(folder)
    .filter((file) => /\.json(\.gz)?$/.test(file))
    .sort()
    .map((file) => ({
      kind: 'file',
      name: basename(file).replace(/\.json(\.gz)?$/, ''),
      path: join(folder, file),
    }));
}

export function loadInstance(source: InstanceSource): SlateProblem {
  if (source.kind === 'generated') return spreadOut(source);
  const bytes = readFileSync(source.path);
  const text = (source.path.endsWith('.gz') ? gunzipSync(bytes) : bytes).toString('utf8');
  const read = readProblem(JSON.parse(text));
  if (!read.ok) throw new Error(`${source.path}: ${read.faults.map(describeFault).join('; ')}`);
  return read.problem;
}

const GAMES_A_REGION = 100;

/** A generated weekend; from 100 games on in regions side by side, for an association grows by area. */
function spreadOut({ games, seed }: { readonly games: number; readonly seed: number }): SlateProblem {
  const officials = Math.round(1.2 * games);
  const problem = randomSlate({ seed, games, officials });
  const regions = Math.max(1, Math.round(games / GAMES_A_REGION));
  const columns = Math.ceil(Math.sqrt(regions));
  const venues = problem.places.length - officials;
  const places = problem.places.map((place, i) => {
    const share = i < venues ? i / venues : (i - venues) / officials;
    const region = Math.floor(share * regions);
    // Half a degree of latitude and of longitude, from which a region's own width is a bit more.
    return {
      ...place,
      lat: place.lat - 4 + 0.5 * Math.floor(region / columns),
      lon: place.lon + 0.7 * (region % columns),
    };
  });
  return { ...problem, places };
}
