import type { FastifyInstance } from 'fastify';
import type { Log } from '../../platform/log';

/**
 * One line for each request: the template of its route, never its address, which may name people or hold a secret. Every answer
 * names its request, so that a report can be found in the log.
 */
export function registerRequestLog(server: FastifyInstance, log: Log): void {
  server.addHook('onSend', async (request, reply) => {
    void reply.header('x-request-id', request.id);
  });
  server.addHook('onResponse', async (request, reply) => {
    log.info(
      {
        requestId: request.id,
        method: request.method,
        route: request.routeOptions.url ?? 'none',
        status: reply.statusCode,
        milliseconds: Math.round(reply.elapsedTime),
      },
      'request',
    );
  });
}
