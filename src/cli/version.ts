import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** The version that the package states of itself. */
export function serviceVersion(): string {
  for (let folder = __dirname; folder !== dirname(folder); folder = dirname(folder)) {
    try {
      const found = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as {
        name?: unknown;
        version?: unknown;
      };
      if (found.name === 'crewloom') return String(found.version);
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
    }
  }
  throw new Error('The package description is missing.');
}
