import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify';
import type { Clock } from '../platform/clock';
import type { Log } from '../platform/log';
import type { Tenancy } from '../platform/tenancy';
import { FeedUses } from './feed-uses';
import { PersonalFeedsService } from './personal-feeds.service';

const feedPath = '/cal/:file';

export interface FeedParts {
  readonly feeds: PersonalFeedsService;
  readonly uses: FeedUses;
  readonly clock: Clock;
  readonly log: Log;
}

/**
 * Headers of every answer here. Subscribers keep a copy and ask whether it is current (`no-cache`, not
 * `no-store`: RFC 9111 §5.2.2). There is no Last-Modified: the time of the newest event would not move when an
 * event leaves the feed, and a subscriber who asks by date would be told for ever that nothing changed.
 */
const commonHeaders = {
  'cache-control': 'private, no-cache',
  'referrer-policy': 'no-referrer',
  'x-content-type-options': 'nosniff',
  'x-robots-tag': 'noindex, nofollow, noarchive',
} as const;

/**
 * `GET` and `HEAD /cal/SECRET.ics`: an official's feed for whoever has its address. It knows no cookie, no
 * sign-in, no content negotiation and no error page, since the callers are programs of many makes:
 *
 * - 410 with an empty body for a revoked address: Thunderbird then stops asking and takes the games off;
 * - 404 with an empty body for an address that never was;
 * - 405 for any other method, which some programs try first;
 * - 503 when the database is away; subscribers keep what they have.
 */
export function registerFeedRoutes(server: FastifyInstance, parts: FeedParts): void {
  if (!server.supportedMethods.includes('PROPFIND')) server.addHttpMethod('PROPFIND', { hasBody: true });
  server.route({
    method: ['GET', 'HEAD'],
    url: feedPath,
    handler: (request, reply) => answer(request, reply, parts),
  });
  server.route({
    method: server.supportedMethods.filter((method) => method !== 'GET' && method !== 'HEAD'),
    url: feedPath,
    // Before the body is looked at: a program that tries to upload must hear 405, not that its type is unknown.
    onRequest: (_request, reply, _done) => {
      void reply
        .code(405)
        .headers({ ...commonHeaders, allow: 'GET, HEAD' })
        .send();
    },
    handler: (_request, reply) => reply.send(),
  });
}

/**
 * As `registerFeedRoutes`, with services of their own, which end with the server.
 *
 * @param options.publicUrl address of the service, without a trailing slash
 */
export function serveFeeds(
  server: FastifyInstance,
  options: {
    readonly tenancy: Tenancy;
    readonly clock: Clock;
    readonly log: Log;
    readonly publicUrl: () => string;
  },
): void {
  const { tenancy, clock, log, publicUrl } = options;
  const uses = new FeedUses(tenancy, log);
  registerFeedRoutes(server, {
    feeds: new PersonalFeedsService(tenancy, clock, publicUrl),
    uses,
    clock,
    log,
  });
  server.addHook('onClose', () => uses.write());
}

async function answer(request: FastifyRequest, reply: FastifyReply, parts: FeedParts): Promise<FastifyReply> {
  reply.headers(commonHeaders);
  const { file } = request.params as { file: string };
  if (!file.endsWith('.ics')) return reply.code(404).send();
  const found = await parts.feeds.answer(file.slice(0, -'.ics'.length)).catch((error: unknown) => {
    parts.log.error({ err: error, requestId: request.id }, 'a feed could not be served');
    return null;
  });
  if (found === null) return reply.code(503).header('retry-after', '300').send();
  if (found.kind === 'unknown') return reply.code(404).send();
  if (found.kind === 'revoked') return reply.code(410).send();
  parts.uses.note(found.token, parts.clock.now(), request.headers['user-agent'] ?? '');
  reply.header('etag', found.feed.entityTag);
  if (isCurrent(request.headers['if-none-match'], found.feed.entityTag)) return reply.code(304).send();
  reply
    .header('content-type', 'text/calendar; charset=utf-8')
    .header('content-disposition', 'inline; filename="games.ics"');
  if (request.method !== 'HEAD') return reply.send(found.feed.body);
  return reply.header('content-length', Buffer.byteLength(found.feed.body)).send();
}

/** RFC 9110 §13.1.2: `*`, or a list of tags compared weakly. If-Modified-Since is not looked at: nothing here carries a date. */
function isCurrent(ifNoneMatch: string | undefined, entityTag: string): boolean {
  if (ifNoneMatch === undefined) return false;
  if (ifNoneMatch.trim() === '*') return true;
  const tags = ifNoneMatch.match(/(?:W\/)?"[^"]*"/g) ?? [];
  return tags.some((tag) => tag.replace(/^W\//, '') === entityTag);
}
