import { execFileSync } from 'node:child_process';
import { availableParallelism, cpus, totalmem } from 'node:os';

/** What figures mean nothing without: machine, node, commit. */
export function machineLine(): string {
  const model = cpus()[0]?.model.trim() ?? 'unknown processor';
  const gigabytes = (totalmem() / 2 ** 30).toFixed(0);
  return `${model}, ${availableParallelism()} cores, ${gigabytes} GB; node ${process.version}; commit ${commit()}`;
}

function commit(): string {
  const git = (...words: string[]) =>
    execFileSync('git', words, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] }).trim();
  try {
    return git('rev-parse', '--short', 'HEAD') + (git('status', '--porcelain') === '' ? '' : ' with changes');
  } catch {
    return 'unknown';
  }
}
