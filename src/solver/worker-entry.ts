import { extname, join, sep } from 'node:path';

/** Workers run compiled code; under a test runner that compiles on the fly it lies in `dist`. */
export function workerEntry(folder: string, name: string): string {
  if (extname(__filename) === '.js') return join(folder, `${name}.js`);
  const sources = `${sep}src${sep}`;
  const root = folder.lastIndexOf(sources);
  return join(folder.slice(0, root), 'dist', folder.slice(root), `${name}.js`);
}
