import { randomUUID } from 'node:crypto';
import { joinWorld, type SlateWorld } from '../../database/slates/slate-world';
import type { Browser } from '../../support/http/browser';
import { testService, type TestService } from '../../support/http/test-service';

// Goal: the assignor's way from an empty weekend to crews that have answered, and the official's side of it, through the pages
// alone. Method: the whole service with the real queue and the real solver (by steps) on a small association.
let service: TestService;
let world: SlateWorld;
let assignor: Browser;
let slug: string;
const officials = new Map<string, string>();

beforeAll(async () => {
  service = await testService();
  world = await joinWorld(service.database, service.jobs);
  slug = `a${world.associationId}`;
  for (const name of ['Ada', 'Cleo']) officials.set(name, await world.addOfficial(name));
  for (const name of ['Bea', 'Dora']) {
    officials.set(name, await world.addOfficial(name, { level: 2, may_be_chief: false }));
  }
  await world.addGame('W1');
  await world.addGame('W2', {
    starts_at: '2026-11-29T10:00:00Z',
    local_time: '11:00',
    local_date: '2026-11-29',
  });
  await world.services.workers.start();
  assignor = await service.signedIn({
    associationId: world.associationId,
    roles: ['assignor'],
    name: 'Asta',
  });
}, 120_000);

afterAll(async () => {
  await world.services.workers.stop();
  await service.close();
});

const field = (body: string, name: string) =>
  new RegExp(`name="${name}" value="([^"]*)"`).exec(body)?.[1] ?? '';

test('from an empty list to published crews and an accepted game', async () => {
  const home = await assignor.get(`/${slug}`);
  expect(home.body).toContain('No slate lies ahead.');

  const refused = await assignor.post(`/${slug}/slates`, {
    name: 'Back to front',
    fromDate: '2026-11-29',
    toDate: '2026-11-28',
  });
  expect(refused.status).toBe(422);
  expect(refused.body).toContain('The last day must not lie before the first.');
  expect(refused.body).toContain('value="Back to front"');

  const opened = await assignor.post(`/${slug}/slates`, {
    name: 'Weekend',
    fromDate: '2026-11-28',
    toDate: '2026-11-29',
  });
  expect(opened.status).toBe(303);
  const slate = opened.location ?? '';
  expect((await assignor.get(slate)).body).toContain('Build the crews');

  const started = await assignor.post(`${slate}/builds`, { seconds: '1' });
  const build = started.location ?? '';
  expect(build).toMatch(/\/builds\/[0-9a-f-]{36}$/);
  const watched = await assignor.get(build);
  expect(watched.status).toBe(200);
  const events = await assignor.get(`${build}/events`);
  expect(events.headers['content-type']).toContain('text/event-stream');
  expect(events.body.trimEnd()).toMatch(/event: finished\ndata: \{"state":"done"\}$/);
  expect((await assignor.get(build)).body).toContain('It is built.');

  const built = await assignor.get(slate);
  expect(built.body).toMatch(/Seats filled<\/dt><dd class="amount">4<span class="unit"> of 4/);
  expect(built.body).toContain('Nobody has been told anything yet.');
  expect(built.body).not.toContain('These crews break rules');

  const preview = await assignor.get(`${slate}/publication`);
  expect(preview.body).toContain('4 seats are offered');
  const form = {
    idempotencyKey: field(preview.body, 'idempotencyKey'),
    version: field(preview.body, 'version'),
  };
  const published = await assignor.post(`${slate}/publication`, form);
  expect(published).toMatchObject({ status: 303, location: slate });
  const twice = await assignor.post(`${slate}/publication`, form);
  expect(twice).toMatchObject({ status: 303, location: slate });
  expect(await world.count('publication')).toBe(1);
  expect(await world.count('assignment')).toBe(4);
  expect((await assignor.get(slate)).body).toContain('Everybody knows how it stands.');

  const { rows } = await service.database.owner.query<{ official_id: string }>(
    `select official_id from assignment where seat = 'chief' order by starts_at limit 1`,
  );
  const officialId = rows[0]?.official_id ?? '';
  const official = await service.signedIn({
    associationId: world.associationId,
    roles: ['official'],
    officialId,
    name: 'Official',
  });
  expect((await official.get(`/${slug}`)).location).toBe(`/${slug}/my-games`);
  const mine = await official.get(`/${slug}/my-games`);
  expect(mine.body).toContain('Saturday 28 November, 15:00');
  expect(mine.body).toContain('Leave home');
  expect(mine.body).toContain('crew chief');
  const reply = /action="([^"]+\/reply)"/.exec(mine.body)?.[1] ?? '';
  const stale = await official.post(reply, { sequence: '7', reply: 'ACCEPTED' });
  expect(stale.status).toBe(409);
  expect(stale.body).toContain('The game has changed since you looked.');
  expect((await official.post(reply, { sequence: '0', reply: 'ACCEPTED' })).status).toBe(303);
  expect((await official.get(`/${slug}/my-games`)).body).toContain('You have accepted.');
  expect((await assignor.get(slate)).body).toContain('accepted');

  // Nobody answers for somebody else.
  const other = await service.signedIn({
    associationId: world.associationId,
    roles: ['official'],
    officialId: [...officials.values()].find((id) => id !== officialId) ?? '',
    name: 'Other official',
  });
  await other.get(`/${slug}/my-games`);
  expect((await other.post(reply, { sequence: '0', reply: 'DECLINED' })).status).toBe(404);

  expect(
    (await official.post(reply, { sequence: '0', reply: 'DECLINED', reason: 'Ill <b>in bed</b>' })).status,
  ).toBe(303);
  const declined = await assignor.get(slate);
  expect(declined.body).toContain('open, declined by');
  expect(declined.body).toMatch(/Open seats<\/dt><dd class="amount">1</);
}, 60_000);

test('whoever publishes what they did not look at is shown how it stands now', async () => {
  const list = await assignor.get(`/${slug}`);
  const slate = new RegExp(`/${slug}/slates/[0-9a-f-]{36}`).exec(list.body)?.[0] ?? '';
  await assignor.get(`${slate}/publication`);
  const idempotencyKey = randomUUID();
  const answer = await assignor.post(`${slate}/publication`, { idempotencyKey, version: '1' });
  expect(answer.status).toBe(409);
  expect(answer.body).toContain('Somebody changed the slate while you looked at it.');
});
