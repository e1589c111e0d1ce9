import type { IncomingMessage } from 'node:http';
import { NestFactory } from '@nestjs/core';
import { FastifyAdapter, type NestFastifyApplication } from '@nestjs/platform-fastify';
import type { FastifyInstance } from 'fastify';
import { SignIn } from './access/sign-in';
import { AppModule, type AppGround } from './app.module';
import type { Health } from './platform/health';
import { requestId } from './platform/log';
import { EventStreams } from './web/http/event-streams';
import { registerRequestLog } from './web/http/request-log';
import { registerSecurity } from './web/http/security';
import { registerServiceRoutes } from './web/http/service-routes';

// Forms and JSON of ours are far smaller; files come as multipart and have limits of their own.
const bodyBytesMax = 1_000_000;

export interface HttpAppOptions extends AppGround {
  readonly readHealth: () => Promise<Health>;
  /** Routes that stand beside the guarded ones because the caller is a program with a secret address. */
  readonly registerRoutes?: (server: FastifyInstance) => void;
}

/** The HTTP side of the service, ready to listen or to be asked directly. `close()` ends open streams first. */
export async function createHttpApp(options: HttpAppOptions): Promise<NestFastifyApplication> {
  const adapter = new FastifyAdapter({
    logger: false,
    bodyLimit: bodyBytesMax,
    // A proxy on this machine may say for whom it asks; nobody else may.
    trustProxy: 'loopback',
    genReqId: (request: IncomingMessage) => requestId(request.headers['x-request-id']),
  });
  const app = await NestFactory.create<NestFastifyApplication>(AppModule.on(options), adapter, {
    logger: false,
    abortOnError: false,
  });
  const server = adapter.getInstance<FastifyInstance>();
  registerRequestLog(server, options.log);
  await registerSecurity(server, { isSecure: options.address.isSecure() });
  registerServiceRoutes(server, options.readHealth);
  options.registerRoutes?.(server);
  server.addHook('preClose', async () => {
    app.get(EventStreams).stop();
    await app.get(SignIn).settled();
  });
  await app.init();
  await server.ready();
  return app;
}
