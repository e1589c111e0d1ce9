import { execFile } from 'node:child_process';
import { readFile, stat } from 'node:fs/promises';
import { dirname } from 'node:path';
import { promisify } from 'node:util';

/**
 * As whom the built-in Postgres runs. Postgres refuses to run as root, so root hands it to an unprivileged account of
 * the machine; everybody else runs it as themselves.
 */
export interface ServerAccount {
  /** Owner for the data; absent when the server runs as the current user. */
  readonly owner?: { readonly uid: number; readonly gid: number };
  /** Words before the command line that change the account, or empty. */
  readonly prefix: readonly string[];
  /** Account for `spawn` when no prefix is needed. */
  readonly spawnAs: { readonly uid?: number; readonly gid?: number };
}

const run = promisify(execFile);

/**
 * Chooses the account: the owner of data that exist already, else `postgres`, else `nobody`.
 *
 * @param options.dataDirectory existing folder below which the data lie
 * @param options.cluster the data themselves, which need not exist yet
 * @param options.programs files that the account must be able to run
 * @throws when root's folders are closed to every such account and the machine offers no way in
 */
export async function chooseServerAccount(options: {
  dataDirectory: string;
  cluster: string;
  programs: readonly string[];
}): Promise<ServerAccount> {
  if (process.getuid?.() !== 0) return { prefix: [], spawnAs: {} };
  const owner = (await existingOwner(options.cluster)) ?? (await unprivilegedAccount());
  const folders = [options.dataDirectory, ...options.programs.map(dirname)];
  const closed = await firstClosedFolder(folders, owner);
  if (closed === null) return { owner, prefix: [], spawnAs: owner };

  // A clone under /root or in a private temporary folder: the account may own the data and yet not walk to them.
  for (const right of ['dac_read_search', 'dac_override']) {
    const prefix = withRight(right, owner);
    if (await canReach(prefix, [options.dataDirectory, ...options.programs])) {
      return { owner, prefix, spawnAs: {} };
    }
  }
  throw new Error(
    `The built-in Postgres cannot run as root, and account ${owner.uid} may not enter ${closed}. ` +
      'Use a folder that every account may enter, run as another user, or set DATABASE_URL.',
  );
}

/**
 * Linux can grant one process and its children to pass closed folders and nothing more (capabilities(7)); containers often lack
 * `dac_read_search` and have only the wider `dac_override`. `no_setuid_fixup` lets the right count when a program asks beforehand
 * whether it may, as Postgres does.
 */
function withRight(right: string, account: { uid: number; gid: number }): string[] {
  return [
    'setpriv',
    `--reuid=${account.uid}`,
    `--regid=${account.gid}`,
    '--clear-groups',
    '--securebits=+no_setuid_fixup',
    `--inh-caps=-all,+${right}`,
    `--ambient-caps=-all,+${right}`,
    `--bounding-set=-all,+${right}`,
  ];
}

async function canReach(prefix: readonly string[], paths: readonly string[]): Promise<boolean> {
  const [command, ...args] = prefix;
  const question = paths.flatMap((path, index) => [...(index > 0 ? ['-a'] : []), '-x', path]);
  try {
    await run(command ?? 'setpriv', [...args, 'test', ...question]);
    return true;
  } catch {
    return false;
  }
}

async function existingOwner(folder: string): Promise<{ uid: number; gid: number } | null> {
  try {
    const { uid, gid } = await stat(folder);
    return uid === 0 ? null : { uid, gid };
  } catch {
    return null;
  }
}

async function unprivilegedAccount(): Promise<{ uid: number; gid: number }> {
  const lines = (await readFile('/etc/passwd', 'utf8')).split('\n').map((line) => line.split(':'));
  for (const name of ['postgres', 'nobody']) {
    const found = lines.find((fields) => fields[0] === name);
    const [uid, gid] = [Number(found?.[2]), Number(found?.[3])];
    if (uid > 0 && gid > 0) return { uid, gid };
  }
  throw new Error(
    'The built-in Postgres cannot run as root, and this machine has neither an account "postgres" nor "nobody". ' +
      'Run as another user, or set DATABASE_URL.',
  );
}

async function firstClosedFolder(
  folders: readonly string[],
  account: { uid: number; gid: number },
): Promise<string | null> {
  for (const folder of folders) {
    for (let path = folder; ; path = dirname(path)) {
      const { mode, uid, gid } = await stat(path);
      const execute = uid === account.uid ? 0o100 : gid === account.gid ? 0o010 : 0o001;
      if ((mode & execute) === 0) return path;
      if (path === dirname(path)) break;
    }
  }
  return null;
}
