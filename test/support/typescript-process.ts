import { spawn, type ChildProcess } from 'node:child_process';

// Compiles on the way in, as the test runner does, so that a test needs no build before it.
const hook = `
  const { transformFileSync } = require('@swc/core');
  const options = {
    swcrc: false,
    jsc: {
      target: 'es2023',
      parser: { syntax: 'typescript', decorators: true },
      transform: { legacyDecorator: true, decoratorMetadata: true },
    },
    module: { type: 'commonjs' },
  };
  require.extensions['.ts'] = (module, file) => module._compile(transformFileSync(file, options).code, file);
`;

/**
 * Starts a Node process of its own, for what only a whole process can show: being killed, or living in another zone.
 *
 * @param script CommonJS; it may `require` TypeScript files by absolute path
 */
export function spawnTypescript(script: string, env: Readonly<Record<string, string>> = {}): ChildProcess {
  return spawn(process.execPath, ['-e', hook + script], {
    env: { ...process.env, ...env },
    stdio: ['pipe', 'pipe', 'pipe'],
  });
}

/** Waits for the process to end and returns what it printed. @throws with its error output when it failed */
export function outputOf(child: ChildProcess): Promise<string> {
  let [output, errors] = ['', ''];
  child.stdout?.on('data', (chunk: Buffer) => (output += chunk.toString()));
  child.stderr?.on('data', (chunk: Buffer) => (errors += chunk.toString()));
  return new Promise((resolve, reject) => {
    child.once('error', reject);
    child.once('close', (code) => (code === 0 ? resolve(output) : reject(new Error(errors))));
  });
}

/** Waits for the first line that the process prints. */
export function firstLineOf(child: ChildProcess): Promise<string> {
  let [output, errors] = ['', ''];
  return new Promise((resolve, reject) => {
    child.stderr?.on('data', (chunk: Buffer) => (errors += chunk.toString()));
    child.stdout?.on('data', (chunk: Buffer) => {
      output += chunk.toString();
      const end = output.indexOf('\n');
      if (end >= 0) resolve(output.slice(0, end));
    });
    child.once('error', reject);
    child.once('close', () => reject(new Error(`It ended without a line. ${errors}`)));
  });
}
