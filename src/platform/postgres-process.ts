import { execFile } from 'node:child_process';
import { readFile, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';

const run = promisify(execFile);

/** What the lock file of a Postgres data folder says about the server that uses it. */
export interface PostmasterFile {
  readonly pid: number;
  readonly port: number;
}

/** Whether a process of this number exists (it may be anybody's, or waiting to be collected). */
export function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

/** Reads `postmaster.pid`; `null` when there is none or it is half written. */
export async function readPostmasterFile(cluster: string): Promise<PostmasterFile | null> {
  const text = await readFile(join(cluster, 'postmaster.pid'), 'utf8').catch(() => '');
  // Lines by the server's miscadmin.h: process, data folder, start time, port, ...
  const lines = text.split('\n');
  const [pid, port] = [Number(lines[0]), Number(lines[3])];
  return pid > 0 && port > 0 ? { pid, port } : null;
}

/**
 * Whether that process is a server of this folder. After a crash its number may belong to somebody else by now, and Postgres
 * itself would then refuse to start.
 */
export async function isServerOf(pid: number, cluster: string): Promise<boolean> {
  if (!isRunning(pid)) return false;
  if (process.platform === 'win32') return true;
  const commandLine =
    process.platform === 'linux'
      ? await readFile(`/proc/${pid}/cmdline`, 'utf8').catch(() => '')
      : await run('ps', ['-p', String(pid), '-o', 'command=']).then(
          ({ stdout }) => stdout,
          () => '',
        );
  return commandLine.includes(cluster);
}

/** Removes the lock file that a killed server left behind. */
export async function removePostmasterFile(cluster: string): Promise<void> {
  await rm(join(cluster, 'postmaster.pid'), { force: true });
}

/** Asks the server to end its sessions and write everything out; waits until it is gone, at most 30 seconds. */
export async function stopServer(pid: number, cluster: string): Promise<void> {
  process.kill(pid, 'SIGINT');
  const deadline = Date.now() + 30_000;
  while (await isServerOf(pid, cluster)) {
    if (Date.now() > deadline) throw new Error(`The built-in Postgres (process ${pid}) does not stop.`);
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
}
