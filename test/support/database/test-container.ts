import { connect } from 'node:net';
import { homedir } from 'node:os';
import { join } from 'node:path';

const startTimeoutMs = 60_000;

/** Starts Postgres in a container where a container engine answers; `null` where none does or the image cannot be had. */
export async function startTestContainer(): Promise<{ url: string; stop(): Promise<void> } | null> {
  if (!(await engineAnswers())) return null;
  const { PostgreSqlContainer } = await import('@testcontainers/postgresql');
  try {
    const container = await new PostgreSqlContainer('postgres:18-alpine')
      .withCommand([
        'postgres',
        '-c',
        'fsync=off',
        '-c',
        'full_page_writes=off',
        '-c',
        'synchronous_commit=off',
      ])
      .withStartupTimeout(startTimeoutMs)
      .start();
    return {
      url: container.getConnectionUri(),
      stop: async () => {
        await container.stop();
      },
    };
  } catch (error) {
    process.stderr.write(`No test container (${String(error)}); using the built-in Postgres.\n`);
    return null;
  }
}

/** Asks the usual sockets first: loading the client takes a second, and most machines that run this have no engine. */
async function engineAnswers(): Promise<boolean> {
  if (process.env['DOCKER_HOST'] !== undefined) return true;
  const runtime = process.env['XDG_RUNTIME_DIR'] ?? '';
  const sockets = [
    '/var/run/docker.sock',
    join(homedir(), '.docker/run/docker.sock'),
    join(runtime, 'docker.sock'),
    join(runtime, 'podman/podman.sock'),
  ];
  const answers = await Promise.all(sockets.map(answersOn));
  return answers.includes(true);
}

function answersOn(path: string): Promise<boolean> {
  return new Promise((resolve) => {
    const socket = connect({ path, timeout: 1000 });
    const end = (answer: boolean) => {
      socket.destroy();
      resolve(answer);
    };
    socket.once('connect', () => end(true));
    socket.once('error', () => end(false));
    socket.once('timeout', () => end(false));
  });
}
