import { spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { chmod, chown, mkdir, open, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { isRunning } from './postgres-process';
import type { PostgresBinaries } from './postgres-binaries';
import type { ServerAccount } from './postgres-account';

/** Passwords of the built-in server's two roles, kept in a file that only its owner can read. */
export interface ClusterCredentials {
  readonly ownerPassword: string;
  readonly appPassword: string;
}

/** Role that owns the schema in the built-in server. */
export const ownerRole = 'crewloom_owner';

// The log is only for reading after a failed start, so it need not be kept for ever.
const logBytesMax = 5_000_000;

/** Files of the built-in server below the data folder. */
export function clusterPaths(dataDirectory: string) {
  const root = join(dataDirectory, 'postgres');
  return {
    root,
    cluster: join(root, 'cluster'),
    credentials: join(root, 'credentials.json'),
    log: join(root, 'server.log'),
  };
}

/** Whether a finished cluster lies in the data folder. */
export async function clusterVersion(dataDirectory: string): Promise<number | null> {
  const file = join(clusterPaths(dataDirectory).cluster, 'PG_VERSION');
  const text = await readFile(file, 'utf8').catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return null;
    throw error;
  });
  return text === null ? null : Number(text.trim());
}

export async function readCredentials(dataDirectory: string): Promise<ClusterCredentials> {
  return JSON.parse(await readFile(clusterPaths(dataDirectory).credentials, 'utf8')) as ClusterCredentials;
}

/**
 * Creates the cluster beside its final place and moves it there in one step: a start that is killed half-way leaves nothing
 * that looks finished, and of two processes that start at once the slower one finds the other's cluster in place and keeps that.
 */
export async function createCluster(
  dataDirectory: string,
  binaries: PostgresBinaries,
  account: ServerAccount,
  settings: Readonly<Record<string, string>>,
): Promise<void> {
  await removeAbandoned(dataDirectory);
  const draft = join(dataDirectory, `postgres.new-${process.pid}-${randomBytes(4).toString('hex')}`);
  const cluster = join(draft, 'cluster');
  const passwordFile = join(draft, 'password');
  const credentials: ClusterCredentials = { ownerPassword: secret(), appPassword: secret() };
  try {
    await mkdir(draft);
    await chmod(draft, 0o711);
    await mkdir(cluster, { mode: 0o700 });
    await writeFile(passwordFile, credentials.ownerPassword, { mode: 0o600 });
    if (account.owner !== undefined) {
      await chown(cluster, account.owner.uid, account.owner.gid);
      await chown(passwordFile, account.owner.uid, account.owner.gid);
    }
    await initialise(binaries, account, cluster, passwordFile, settings['fsync'] !== 'off');
    await rm(passwordFile);
    await writeFile(join(draft, 'credentials.json'), JSON.stringify(credentials), { mode: 0o600 });
    await rename(draft, clusterPaths(dataDirectory).root).catch((error: NodeJS.ErrnoException) => {
      if (!['ENOTEMPTY', 'EEXIST', 'EPERM'].includes(error.code ?? '')) throw error;
    });
  } finally {
    await rm(draft, { recursive: true, force: true });
  }
}

function secret(): string {
  return randomBytes(24).toString('base64url');
}

/** Drafts of processes that were killed while creating a cluster. */
async function removeAbandoned(dataDirectory: string): Promise<void> {
  for (const name of await readdir(dataDirectory)) {
    const pid = /^postgres\.new-(\d+)-/.exec(name)?.[1];
    if (pid !== undefined && !isRunning(Number(pid))) {
      await rm(join(dataDirectory, name), { recursive: true, force: true });
    }
  }
}

async function initialise(
  binaries: PostgresBinaries,
  account: ServerAccount,
  cluster: string,
  passwordFile: string,
  isDurable: boolean,
): Promise<void> {
  const args = [
    `--pgdata=${cluster}`,
    `--username=${ownerRole}`,
    `--pwfile=${passwordFile}`,
    '--auth=scram-sha-256',
    '--encoding=UTF8',
    // The server's own C.UTF-8 gives the same order and case rules on every machine.
    '--locale=C',
    '--locale-provider=builtin',
    '--builtin-locale=C.UTF-8',
    '--no-instructions',
    ...(isDurable ? [] : ['--no-sync']),
  ];
  const child = spawnAs(account, binaries.initdb, args, 'pipe');
  let output = '';
  child.stdout?.on('data', (chunk: Buffer) => (output += chunk.toString()));
  child.stderr?.on('data', (chunk: Buffer) => (output += chunk.toString()));
  const code = await new Promise<number | null>((resolve, reject) => {
    child.once('error', reject);
    child.once('close', resolve);
  });
  if (code !== 0) throw new Error(`The built-in Postgres could not create its data folder:\n${output}`);
}

/** Starts the server itself in a session of its own, so that Ctrl-C in our terminal does not reach it before us. */
export async function spawnServer(options: {
  dataDirectory: string;
  binaries: PostgresBinaries;
  account: ServerAccount;
  port: number;
  settings: Readonly<Record<string, string>>;
}) {
  const paths = clusterPaths(options.dataDirectory);
  const settings = {
    listen_addresses: '127.0.0.1',
    unix_socket_directories: '',
    TimeZone: 'UTC',
    log_timezone: 'UTC',
    ...options.settings,
  };
  const args = ['-D', paths.cluster, '-p', String(options.port)];
  for (const [name, value] of Object.entries(settings)) args.push('-c', `${name}=${value}`);
  const log = await open(paths.log, 'a', 0o600);
  if ((await log.stat()).size > logBytesMax) await log.truncate(0);
  try {
    const child = spawnAs(options.account, options.binaries.postgres, args, log.fd);
    child.unref();
    return child;
  } finally {
    await log.close();
  }
}

function spawnAs(account: ServerAccount, program: string, args: readonly string[], output: 'pipe' | number) {
  const [command, ...rest] = [...account.prefix, program, ...args];
  const environment = Object.entries(process.env).filter(([name]) => !name.startsWith('PG'));
  return spawn(command ?? program, rest, {
    ...account.spawnAs,
    cwd: process.platform === 'win32' ? undefined : '/',
    env: { ...Object.fromEntries(environment), LC_ALL: 'C', TZ: 'UTC' },
    stdio: ['ignore', output, output],
    detached: output !== 'pipe',
    windowsHide: true,
  });
}
