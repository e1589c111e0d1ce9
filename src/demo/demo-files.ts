import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { ImportFile } from '../games/imports/import-plan';
import { withDates } from './relative-dates';

/** The lists of the demo, each a file of that name in `seed/`. */
export const demoKinds = [
  'levels',
  'venues',
  'officials',
  'travel-legs',
  'availability',
  'divisions',
  'teams',
  'games',
  'conflicts',
  'crews',
] as const;

export type DemoKind = (typeof demoKinds)[number];

/** The folder `seed/` of the package, from the sources as well as from `dist/`. */
export function seedFolder(): string {
  const fromSources = join(__dirname, '../../seed');
  return __dirname.includes(`${join('dist', 'src')}`) ? join(__dirname, '../../../seed') : fromSources;
}

/** Reads the demo's lists and puts days in place of what they state relative to `today` (ISO 8601). */
export async function readDemoFiles(
  today: string,
  kinds: readonly DemoKind[] = demoKinds,
): Promise<ImportFile[]> {
  const files: ImportFile[] = [];
  for (const kind of kinds) {
    const name = `${kind}.csv`;
    const text = await readFile(join(seedFolder(), name), 'utf8');
    files.push({ kind, name: `seed/${name}`, bytes: new TextEncoder().encode(withDates(text, today)) });
  }
  return files;
}
