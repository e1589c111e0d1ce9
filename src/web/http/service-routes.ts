import type { FastifyInstance } from 'fastify';
import { assets } from '../assets';
import type { Health } from '../../platform/health';

/**
 * Routes that know nobody: style sheet and script, word to search engines, and whether the service is well. They stand beside
 * the guarded ones, so that they cost no look at the database (health excepted).
 */
export function registerServiceRoutes(server: FastifyInstance, readHealth: () => Promise<Health>): void {
  for (const { path, contentType, body } of assets) {
    server.get(path, (_request, reply) =>
      reply
        .header('content-type', contentType)
        .header('cache-control', 'public, max-age=31536000, immutable')
        .send(body),
    );
  }
  // Calendar feeds stay out of it: some calendar programs obey these rules and would stop fetching.
  server.get('/robots.txt', (_request, reply) =>
    reply
      .header('content-type', 'text/plain; charset=utf-8')
      .send('User-agent: *\nDisallow: /sign-in\nDisallow: /account\nDisallow: /api\n'),
  );
  server.get('/health', async (_request, reply) => {
    const health = await readHealth();
    return reply
      .status(health.status === 'down' ? 503 : 200)
      .header('cache-control', 'no-store')
      .send(health);
  });
  server.get('/ready', async (_request, reply) => {
    const { status } = await readHealth();
    const isReady = status !== 'down';
    return reply
      .status(isReady ? 200 : 503)
      .header('cache-control', 'no-store')
      .send({ ready: isReady });
  });
}
