import Fastify, { type FastifyBaseLogger, type FastifyInstance } from 'fastify';
import ICAL from 'ical.js';
import { Writable } from 'node:stream';
import { AuditTrail } from '../../../src/access/audit-trail';
import { FeedToken } from '../../../src/calendar/feed-token.entity';
import { FeedTokensService } from '../../../src/calendar/feed-tokens.service';
import { FeedUses } from '../../../src/calendar/feed-uses';
import { registerFeedRoutes } from '../../../src/calendar/feed.routes';
import { PersonalFeedsService } from '../../../src/calendar/personal-feeds.service';
import { FixedClock } from '../../../src/platform/clock';
import { createLog } from '../../../src/platform/log';
import { newToken } from '../../../src/platform/random';
import { Official } from '../../../src/roster/official.entity';
import { Assignment } from '../../../src/slates/assignment.entity';
import {
  raiseFeedRevision,
  smallAssociation,
  type SmallAssociation,
} from '../../database/calendar/small-association';
import { testDatabase, type TestDatabase } from '../../support/database/test-database';
import { byteFaults } from '../../unit/calendar/ical-lines';

// Goal: the feed over HTTP, as calendar programs ask for it. Method: the real routes, services and database; two
// associations, so that each test could see too much; the log is caught to be searched for secrets.
const clock = new FixedClock('2026-11-20T12:00:00Z');
let logged = '';
const destination = new Writable({
  write(chunk, _encoding, done) {
    logged += String(chunk);
    done();
  },
});
const log = createLog({ level: 'trace', destination });
const serverLog: FastifyBaseLogger = log;

let database: TestDatabase;
let server: FastifyInstance;
let feeds: PersonalFeedsService;
let tokens: FeedTokensService;
let uses: FeedUses;
let ours: SmallAssociation;
let theirs: SmallAssociation;
let secret: string;

beforeAll(async () => {
  database = await testDatabase();
  const { tenancy } = database;
  ours = await smallAssociation(tenancy, { slug: 'marram-coast', umpireBirthDate: '2012-05-01' });
  theirs = await smallAssociation(tenancy, { slug: 'elsewhere' });
  feeds = new PersonalFeedsService(tenancy, clock, () => 'https://crews.example.org');
  tokens = new FeedTokensService(tenancy, new AuditTrail(clock), clock, newToken);
  uses = new FeedUses(tenancy, log);
  server = Fastify({ loggerInstance: serverLog });
  registerFeedRoutes(server, { feeds, uses, clock, log });
  await server.ready();
  secret = await make('phone');
}, 120_000);

afterAll(async () => {
  await uses.write();
  await server.close();
  await database.close();
});

const owner = () => ({ associationId: ours.id, officialId: ours.chiefId, accountId: null });

async function make(name: string): Promise<string> {
  const made = await tokens.make(owner(), name);
  if (made.kind !== 'made') throw new Error(made.kind);
  return made.secret;
}

const get = (token: string, headers: Record<string, string> = {}) =>
  server.inject({ method: 'GET', url: `/cal/${token}.ics`, headers });

describe('GET', () => {
  it('answers with the official’s own games, for programs and not for search engines', async () => {
    const answer = await get(secret);
    expect(answer.statusCode).toBe(200);
    expect(answer.headers).toMatchObject({
      'content-type': 'text/calendar; charset=utf-8',
      'content-disposition': 'inline; filename="games.ics"',
      'cache-control': 'private, no-cache',
      'referrer-policy': 'no-referrer',
      'x-content-type-options': 'nosniff',
      'x-robots-tag': 'noindex, nofollow, noarchive',
    });
    expect(answer.headers).not.toHaveProperty('last-modified');
    expect(answer.headers).not.toHaveProperty('set-cookie');
    expect(answer.headers).not.toHaveProperty('access-control-allow-origin');
    expect(byteFaults(answer.body)).toEqual([]);
    const events = new ICAL.Component(ICAL.parse(answer.body) as unknown[]).getAllSubcomponents('vevent');
    const event = new ICAL.Event(events[0]);
    expect(events).toHaveLength(1);
    expect(event.summary).toBe('TENTATIVE – Crew chief: Harbour Gulls v Dune Runners (Under 14)');
    expect(event.startDate.toJSDate()).toEqual(new Date('2026-11-28T18:10:00Z'));
    expect(event.endDate.toJSDate()).toEqual(new Date('2026-11-28T20:15:00Z'));
    expect(event.description).toContain('Leave home by ');
    expect(event.description).toContain('Marram Coast estimate');
  });

  it('tells nothing personal of anybody: no phone, address, mail, fee, and no minor’s name', async () => {
    const { body } = await get(secret);
    const unfolded = body.replaceAll('\r\n ', '');
    for (const text of [
      '01632',
      '1632',
      'officials.example',
      'thrift',
      'Thrift',
      'Robin',
      'Private Row',
      '2500',
    ]) {
      expect(unfolded).not.toContain(text);
    }
    expect(unfolded).toContain('Partner (umpire): see the briefing');
  });

  it('ignores Accept and takes no cookie, and is not compressed', async () => {
    for (const accept of ['text/html', 'application/json', 'image/png']) {
      const answer = await get(secret, { accept, cookie: 'a=b', 'accept-encoding': 'gzip, br' });
      expect(answer.statusCode).toBe(200);
      expect(answer.headers).not.toHaveProperty('content-encoding');
    }
  });

  it('gives the same bytes and the same tag as time passes', async () => {
    const first = await get(secret);
    clock.advanceMinutes(11);
    const second = await get(secret);
    expect(second.body).toBe(first.body);
    expect(second.headers.etag).toBe(first.headers.etag);
    expect(first.headers.etag).toMatch(/^"[\w-]{43}"$/);
  });
});

describe('conditional requests', () => {
  it('304 to the current tag: alone, in a list, weak, or *', async () => {
    const tag = String((await get(secret)).headers.etag);
    for (const value of [tag, `"other", ${tag}`, `W/${tag}`, '*']) {
      const answer = await get(secret, { 'if-none-match': value });
      expect(answer.statusCode).toBe(304);
      expect(answer.body).toBe('');
      expect(answer.headers.etag).toBe(tag);
      expect(answer.headers['cache-control']).toBe('private, no-cache');
    }
    expect((await get(secret, { 'if-none-match': '"other"' })).statusCode).toBe(200);
  });

  it('200 after a change, also when an event has left the feed, whatever date the program asks with', async () => {
    const before = await get(secret);
    await database.tenancy.run(ours.id, async (tx) => {
      const row = { associationId: ours.id, id: ours.chiefAssignmentId };
      await tx.update(Assignment, row, { reply: 'ACCEPTED', revisedAt: new Date('2026-11-20T12:30:00Z') });
      await raiseFeedRevision(tx, ours.id, ours.chiefId);
    });
    const after = await get(secret, { 'if-none-match': String(before.headers.etag) });
    expect(after.statusCode).toBe(200);
    expect(after.body).toContain('STATUS:CONFIRMED');
    await database.owner.query('delete from assignment where id = $1', [ours.chiefAssignmentId]);
    await database.tenancy.run(ours.id, (tx) => raiseFeedRevision(tx, ours.id, ours.chiefId));
    const gone = await get(secret, {
      'if-none-match': String(after.headers.etag),
      'if-modified-since': 'Fri, 20 Nov 2099 12:00:00 GMT',
    });
    expect(gone.statusCode).toBe(200);
    expect(gone.body).not.toContain('BEGIN:VEVENT');
    expect(gone.body).toContain('BEGIN:VTIMEZONE');
  });
});

describe('HEAD and other methods', () => {
  it('HEAD answers as GET, without the body', async () => {
    const got = await get(secret);
    const head = await server.inject({ method: 'HEAD', url: `/cal/${secret}.ics` });
    expect(head.statusCode).toBe(200);
    expect(head.body).toBe('');
    expect(head.headers.etag).toBe(got.headers.etag);
    expect(head.headers['content-type']).toBe(got.headers['content-type']);
    expect(head.headers['content-length']).toBe(String(Buffer.byteLength(got.body)));
  });

  it.each(['PUT', 'POST', 'DELETE', 'PATCH', 'OPTIONS', 'PROPFIND'])(
    '%s is 405 with Allow',
    async (method) => {
      const answer = await server.inject({
        method: method as 'PUT',
        url: `/cal/${secret}.ics`,
        headers: { 'content-type': 'text/calendar', 'if-match': '"x"' },
        ...(method === 'OPTIONS' ? {} : { payload: 'BEGIN:VCALENDAR' }),
      });
      expect(answer.statusCode).toBe(405);
      expect(answer.headers.allow).toBe('GET, HEAD');
      expect(answer.body).toBe('');
    },
  );
});

describe('other addresses', () => {
  it('404 and nothing else for an address that never was', async () => {
    for (const token of [
      newToken().secret,
      'x',
      `${secret}A`,
      `${secret.slice(0, -1)}!`,
      '%00',
      'a'.repeat(90),
    ]) {
      const answer = await get(token);
      expect({ token, status: answer.statusCode }).toEqual({ token, status: 404 });
      expect(answer.body).toBe('');
    }
    expect((await server.inject({ method: 'GET', url: `/cal/${secret}` })).statusCode).toBe(404);
  });

  it('410 with an empty body once revoked, and the other addresses of the official still work', async () => {
    const tablet = await make('tablet');
    const [, address] = await tokens.list(owner());
    expect(address?.name).toBe('tablet');
    expect((await get(tablet)).statusCode).toBe(200);
    expect(await tokens.revoke(owner(), address?.id ?? '')).toBe(true);
    const answer = await get(tablet);
    expect(answer.statusCode).toBe(410);
    expect(answer.body).toBe('');
    expect((await get(secret)).statusCode).toBe(200);
  });

  it('a rotated address works at once, and the old one is gone', async () => {
    const old = await make('laptop');
    const address = (await tokens.list(owner())).find(({ name }) => name === 'laptop');
    const fresh = await tokens.rotate(owner(), address?.id ?? '');
    if (fresh?.kind !== 'made') throw new Error('not made');
    expect((await get(old)).statusCode).toBe(410);
    expect((await get(fresh.secret)).statusCode).toBe(200);
  });

  it('nobody revokes or rotates somebody else’s address', async () => {
    const [address] = await tokens.list(owner());
    const id = address?.id ?? '';
    const foreign = { associationId: theirs.id, officialId: theirs.chiefId, accountId: null };
    expect(await tokens.revoke(foreign, id)).toBe(false);
    expect(await tokens.rotate({ ...owner(), officialId: ours.umpireId }, id)).toBeNull();
    expect((await get(secret)).statusCode).toBe(200);
  });

  it('an official who has left gets 410', async () => {
    const row = { associationId: ours.id, id: ours.chiefId };
    await database.tenancy.run(ours.id, (tx) => tx.update(Official, row, { active: false }));
    expect((await get(secret)).statusCode).toBe(410);
    await database.tenancy.run(ours.id, (tx) => tx.update(Official, row, { active: true }));
    expect((await get(secret)).statusCode).toBe(200);
  });

  it('a token leads into its own association only', async () => {
    const made = await tokens.make(
      { associationId: theirs.id, officialId: theirs.chiefId, accountId: null },
      'x',
    );
    if (made.kind !== 'made') throw new Error('not made');
    const answer = await get(made.secret);
    expect(answer.body).toContain('NAME:Association elsewhere');
    expect(answer.body).toContain(theirs.gameId.slice(0, 8));
    expect(answer.body).not.toContain(ours.gameId.slice(0, 8));
    // Asked with the ids of one association and the official of another, there is nothing.
    expect(await feeds.feedOf(theirs.id, ours.chiefId)).toBeNull();
  });
});

describe('secrets', () => {
  it('stand in no log line, whatever is asked, also when the database is away', async () => {
    const away = newToken().secret;
    const broken = Fastify({ loggerInstance: serverLog });
    registerFeedRoutes(broken, {
      feeds: {
        answer: () => Promise.reject(new Error(`GET /cal/${away}.ics failed`)),
      } as unknown as PersonalFeedsService,
      uses,
      clock,
      log,
    });
    expect((await broken.inject({ method: 'GET', url: `/cal/${away}.ics` })).statusCode).toBe(503);
    await broken.close();
    const unknown = newToken().secret;
    await get(unknown);
    await server.inject({ method: 'PUT', url: `/cal/${unknown}.ics` });
    expect(logged.split('\n').length).toBeGreaterThan(20);
    for (const text of [secret, unknown, away]) expect(logged).not.toContain(text);
  });

  it('are kept as SHA-256 only', async () => {
    const { rows } = await database.owner.query<{ text: string }>(
      'select row_to_json(f)::text as text from feed_token f',
    );
    expect(rows.length).toBeGreaterThan(3);
    for (const { text } of rows) expect(text).not.toContain(secret);
  });

  it('have 256 random bits', () => {
    expect(secret).toMatch(/^[A-Za-z0-9_-]{43}$/);
  });
});

it('writes the last use and its program down, gathered, and not at every look', async () => {
  await get(secret, { 'user-agent': 'Calendar/1.0 \u00ff' });
  await get(secret, { 'user-agent': 'Calendar/2.0' });
  await uses.write();
  const read = () =>
    database.tenancy.read(ours.id, (tx) =>
      tx.findOneByOrFail(FeedToken, { associationId: ours.id, name: 'phone' }),
    );
  const row = await read();
  expect(row.lastUsedAt).toEqual(clock.now());
  expect(row.lastUserAgent).toBe('Calendar/2.0');
  clock.advanceMinutes(5);
  await get(secret, { 'user-agent': 'Calendar/3.0' });
  await uses.write();
  expect((await read()).lastUserAgent).toBe('Calendar/2.0');
});
