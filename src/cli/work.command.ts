import { Command } from 'commander';
import { ConfigurationError } from '../platform/configuration';
import { SchemaMismatchError } from '../platform/migrate';
import { openService } from './open-service';
import { startWorkers } from './start-workers';

/** The verb `work`: background work only, without pages. Run as many as there is work for. */
export function workCommand(): Command {
  return new Command('work')
    .description('take builds and mail from the queue until stopped; "serve" does so by itself')
    .addHelpText(
      'after',
      '\nMail is sent where SMTP_URL is set. A build that is under way when the process stops is left to the next worker.',
    )
    .action(async (_options: object, command: Command) => {
      try {
        await work();
      } catch (error) {
        if (error instanceof ConfigurationError) command.error(error.message, { exitCode: 2 });
        if (error instanceof SchemaMismatchError) command.error(error.message, { exitCode: 1 });
        throw error;
      }
    });
}

async function work(): Promise<void> {
  const stopped = stopSignal();
  const service = await openService({
    applicationName: 'crewloom work',
    onProgress: (step) => console.error(`Postgres: ${step}`),
  });
  try {
    const { publicUrl, port } = service.configuration;
    const workers = await startWorkers(service, () => publicUrl ?? `http://localhost:${port}`);
    console.error(`Working on ${workers.kinds.join(' and ')}; Ctrl-C stops.`);
    await stopped;
    console.error('Stopping.');
    await workers.stop();
  } finally {
    await service.close();
  }
}

/** Resolves at the first request to stop; a second one finds the usual handlers and ends the process at once. */
function stopSignal(): Promise<void> {
  return new Promise((resolve) => {
    const stop = () => {
      process.off('SIGINT', stop);
      process.off('SIGTERM', stop);
      resolve();
    };
    process.on('SIGINT', stop);
    process.on('SIGTERM', stop);
  });
}
