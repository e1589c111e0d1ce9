import { Command } from 'commander';
import { ConfigurationError } from '../platform/configuration';
import { SchemaMismatchError } from '../platform/migrate';
import { openService } from './open-service';
import { startServer } from './running-server';
import { stopSignal } from './stop-signal';

/** The verb `serve`: pages, API and feeds, and the background work unless another process does it. */
export function serveCommand(): Command {
  return new Command('serve')
    .description('answer browsers, programs and calendars, and work on builds and mail, until stopped')
    .option('--no-work', 'leave builds and mail to processes that run "work"')
    .addHelpText(
      'after',
      '\nListens at HOST and PORT (127.0.0.1 and 8080 unless set; when 8080 is taken, at the next free port).' +
        '\nLinks name PUBLIC_URL where it is set. Without SMTP_URL no mail leaves; "sign-in EMAIL" makes a link here.',
    )
    .action(async (options: { work: boolean }, command: Command) => {
      try {
        await serve(options);
      } catch (error) {
        if (error instanceof ConfigurationError) command.error(error.message, { exitCode: 2 });
        if (error instanceof SchemaMismatchError) command.error(error.message, { exitCode: 1 });
        if ((error as NodeJS.ErrnoException).code === 'EADDRINUSE') {
          command.error('The port that PORT names is taken.', { exitCode: 1 });
        }
        throw error;
      }
    });
}

async function serve(options: { work: boolean }): Promise<void> {
  const stop = stopSignal();
  const service = await openService({
    applicationName: 'crewloom serve',
    onProgress: (step) => console.error(`Postgres: ${step}`),
  });
  try {
    const server = await startServer(service, options);
    const works = server.works.length === 0 ? '' : `, working on ${server.works.join(' and ')}`;
    console.error(`Serving at ${server.url}${works}; Ctrl-C stops.`);
    if (service.configuration.smtpUrl === null) {
      console.error(
        'No mail server is configured (SMTP_URL): "crewloom sign-in EMAIL" makes a link to sign in.',
      );
    }
    await stop.asked;
    console.error('Stopping.');
    await server.stop();
  } finally {
    await service.close();
  }
}
