import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import { SignIn } from '../access/sign-in';
import { NoSignInMailer } from '../access/sign-in-mailer';
import { serveFeeds } from '../calendar/feed.routes';
import { createHttpApp } from '../http-app';
import { SmtpMailer } from '../notices/smtp-mailer';
import { SmtpSignInMailer } from '../notices/smtp-sign-in-mailer';
import { readZonesInUse } from '../places/zones-in-use.query';
import { readHealth } from '../platform/health';
import { installationSecret, newToken } from '../platform/random';
import { ServiceAddress } from '../web/http/service-address';
import type { OpenService } from './open-service';
import { schemaPlan } from './schema-plan';
import { startWorkers, type RunningWorkers } from './start-workers';
import { serviceVersion } from './version';

/** The service while it answers. */
export interface RunningServer {
  /** Where people reach it, without a trailing slash. */
  readonly url: string;
  readonly signIn: SignIn;
  /** What background work this process does besides; empty: none. */
  readonly works: readonly string[];
  /** Ends open streams and the looking for work; closing the service then lets go of the rest. */
  stop(): Promise<void>;
}

/** Ports after the usual one that are tried when it is taken. */
const furtherPorts = 50;

/**
 * Serves pages, API and feeds, and works on builds and mail unless told otherwise.
 *
 * @throws when the port that was asked for is taken
 */
export async function startServer(service: OpenService, options: { work: boolean }): Promise<RunningServer> {
  const { configuration, log } = service;
  const address = new ServiceAddress(configuration.publicUrl);
  const app = await createHttpApp({
    ...service,
    address,
    newToken,
    formSecret:
      configuration.sessionSecret ??
      (await installationSecret(configuration.dataDirectory, 'session-secret')),
    signInMailer:
      configuration.smtpUrl === null
        ? new NoSignInMailer(log)
        : new SmtpSignInMailer(
            new SmtpMailer({ smtpUrl: configuration.smtpUrl, publicUrl: () => address.url() }),
          ),
    version: serviceVersion(),
    readHealth: async () =>
      readHealth(service.dataSource, {
        plan: schemaPlan,
        zones: await readZonesInUse(service).catch(() => []),
        now: service.clock.now(),
      }),
    registerRoutes: (server) => serveFeeds(server, { ...service, publicUrl: () => address.url() }),
  });
  let workers: RunningWorkers | null = null;
  try {
    const port = await listen(app, configuration);
    address.listensAt(configuration.host, port);
    workers = options.work ? await startWorkers(service, () => address.url()) : null;
  } catch (error) {
    await app.close();
    throw error;
  }
  return {
    url: address.url(),
    signIn: app.get(SignIn),
    works: workers?.kinds ?? [],
    stop: async () => {
      await app.close();
      await workers?.stop();
    },
  };
}

/** @returns the port; one of the next ones when the usual one is taken and nobody asked for it by name */
async function listen(
  app: NestFastifyApplication,
  { host, port, portIsExplicit }: OpenService['configuration'],
): Promise<number> {
  const ports = portIsExplicit ? [port] : Array.from({ length: furtherPorts + 1 }, (_, n) => port + n);
  for (const candidate of ports) {
    try {
      await app.listen(candidate, host);
      const bound = app.getHttpServer().address();
      return typeof bound === 'object' && bound !== null ? bound.port : candidate;
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EADDRINUSE' || candidate === ports.at(-1)) throw error;
    }
  }
  throw new Error('There was no port to try.');
}
