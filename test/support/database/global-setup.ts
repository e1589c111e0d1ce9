import { spawn } from 'node:child_process';
import { chmod, mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { startTestContainer } from './test-container';
import { serverUrlVariable, testRun, testFolderVariable, templateVariable } from './test-run';

/**
 * Runs once before all test files: settles which server the run uses and tells the workers through the environment. The built-in
 * server itself is started by the first test file that wants a database, so that runs without one do not pay for it.
 */
export default async function setUp(): Promise<void> {
  process.env[templateVariable] = `crewloom_template_${process.pid}_${Date.now()}`;
  const given = process.env['TEST_DATABASE_URL'];
  if (given !== undefined && given !== '') {
    process.env[serverUrlVariable] = given;
    return;
  }
  const container = await startTestContainer();
  if (container !== null) {
    process.env[serverUrlVariable] = container.url;
    testRun.cleanUps.push(() => container.stop());
    return;
  }
  const folder = await mkdtemp(join(tmpdir(), 'crewloom-test-'));
  await chmod(folder, 0o711);
  process.env[testFolderVariable] = folder;
  testRun.cleanUps.push(watchOver(folder));
}

/**
 * Lets a small process of its own wait for the end of this one, however it ends, and then stop the server and remove its data.
 *
 * @returns ends the run: tells that process to clean up now and waits for it
 */
function watchOver(folder: string): () => Promise<void> {
  const script = `
    const { existsSync, readFileSync, rmSync } = require('node:fs');
    const folder = ${JSON.stringify(folder)};
    const lock = folder + '/postgres/cluster/postmaster.pid';
    const wait = (ms) => Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, ms);
    process.on('SIGINT', () => undefined);
    process.on('SIGTERM', () => undefined);
    process.stdin.resume().on('end', () => {
      if (existsSync(lock)) {
        try { process.kill(Number(readFileSync(lock, 'utf8').split('\\n')[0]), 'SIGQUIT'); } catch {}
        for (let n = 0; n < 250 && existsSync(lock); n += 1) wait(20);
      }
      rmSync(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 });
    });
  `;
  const watcher = spawn(process.execPath, ['-e', script], {
    stdio: ['pipe', 'ignore', 'ignore'],
    detached: true,
  });
  watcher.unref();
  return () =>
    new Promise((resolve) => {
      watcher.once('exit', () => resolve());
      watcher.ref();
      watcher.stdin?.end();
    });
}
