import { smallAssociation, type SmallAssociation } from '../../database/calendar/small-association';
import { assets } from '../../../src/web/assets';
import { testService, type TestService } from '../../support/http/test-service';

// Goal: whatever people typed, pages show it as text; every answer carries the headers that bind a browser; what is missing or
// broken is answered in words. Method: hostile text in every name of the database, and a look at all pages of an association.
const hostile = `"><script>alert(1)</script><img src=x onerror=alert(2)>'&`;
let service: TestService;
let association: SmallAssociation;

beforeAll(async () => {
  service = await testService();
  association = await smallAssociation(service.database.tenancy, { slug: 'marram-coast' });
  const { owner } = service.database;
  await owner.query(`update association set name = $1`, [hostile]);
  await owner.query(`update level_step set name = $1`, [hostile]);
  await owner.query(
    `update venue set name = $1, address = $1, town = $1, entrance = $1, hazards = $1, emergency_address = $1`,
    [hostile],
  );
  await owner.query(`update court set name = $1`, [hostile]);
  await owner.query(`update division set code = $1, name = $1`, [hostile]);
  await owner.query(`update team set name = $1, home_colour = $1`, [hostile]);
  await owner.query(`update team set code = $1 || id`, [hostile]);
  await owner.query(
    `update official set given_name = $1, family_name = $1, home_address = $1, phone = $1, email = 'x@' || $1, number = id || $1`,
    [hostile],
  );
  await owner.query(`update game set number = $1, note = $1`, [hostile]);
}, 120_000);

afterAll(() => service.close());

test('hostile names are shown as they are and never run', async () => {
  const assignor = await service.signedIn({
    associationId: association.id,
    roles: ['assignor', 'administrator', 'official'],
    officialId: association.chiefId,
    name: hostile,
  });
  const made = await assignor.get('/marram-coast');
  expect(made.status).toBe(200);
  const opened = await assignor.post('/marram-coast/slates', {
    name: hostile,
    fromDate: '2026-11-28',
    toDate: '2026-11-29',
  });
  expect(opened.status).toBe(303);
  const pages = [
    '/marram-coast',
    opened.location ?? '',
    `${opened.location}/publication`,
    '/marram-coast/my-games',
    '/marram-coast/my-calendar',
    '/marram-coast/officials',
    `/marram-coast/officials?search=${encodeURIComponent(hostile)}`,
    `/marram-coast/officials/${association.chiefId}`,
    '/marram-coast/venues',
    `/marram-coast/venues/${association.venueId}`,
    '/marram-coast/games',
    `/marram-coast/games/${association.gameId}`,
    `/marram-coast/games/${association.gameId}/briefing`,
    '/marram-coast/imports',
    '/account',
    '/sign-in?next=%22%3E%3Cscript%3E',
    '/api',
  ];
  for (const path of pages) {
    const { status, body, headers } = await assignor.get(path);
    expect([path, status]).toEqual([path, 200]);
    expect([path, /<script>|<img/.test(body)]).toEqual([path, false]);
    // No script or style stands in a page, so the policy below can forbid them.
    expect([path, /<style|<[^>]* style=|<script(?![^>]*src=)| on\w+="/.test(body)]).toEqual([path, false]);
    expect(body).toMatch(/^<!doctype html>\n<html lang="en-GB">/);
    expect(headers['content-security-policy']).toBe(
      "default-src 'none';style-src 'self';script-src 'self';img-src 'self' data:;connect-src 'self';" +
        "form-action 'self';base-uri 'none';frame-ancestors 'none'",
    );
    expect(headers['cache-control']).toBe('no-store');
    expect(headers['x-content-type-options']).toBe('nosniff');
    expect(headers['referrer-policy']).toBe('same-origin');
  }
  const slate = await assignor.get(opened.location ?? '');
  expect(slate.body).toContain('&lt;script>alert(1)&lt;/script>');
});

test('what is not there is answered in words, with the ways of the visitor', async () => {
  const observer = await service.signedIn({
    associationId: association.id,
    roles: ['observer'],
    name: 'Watcher',
  });
  const missing = await observer.get('/marram-coast/officials/no-such-id');
  expect(missing.status).toBe(404);
  expect(missing.body).toContain('Nothing here');
  expect(missing.body).toContain('Watcher');
  const refused = await observer.get('/marram-coast/imports');
  expect(refused.status).toBe(403);
  expect(refused.body).toContain('Not yours to open');
  const nowhere = await service.browser().get('/a/b/c/d');
  expect(nowhere.status).toBe(404);
  expect(nowhere.headers['content-type']).toContain('text/html');
});

test('style sheet, script and icon may be kept for ever, under names that follow their content', async () => {
  for (const { path } of assets) {
    const answer = await service.browser().get(path);
    expect([path, answer.status]).toEqual([path, 200]);
    expect(answer.headers['cache-control']).toBe('public, max-age=31536000, immutable');
    expect(path).toMatch(/^\/assets\/\w+\.[0-9a-f]{16}\.\w+$/);
  }
  expect((await service.browser().get('/assets/style.css')).status).toBe(404);
});

test('the service tells how it is, and search engines what to leave alone, feeds excepted', async () => {
  const health = await service.browser().get('/health');
  expect(health.status).toBe(200);
  expect(health.json()).toMatchObject({ database: { ok: true }, schema: { ok: true } });
  expect((await service.browser().get('/ready')).json()).toEqual({ ready: true });
  const robots = await service.browser().get('/robots.txt');
  expect(robots.body).toContain('Disallow: /sign-in');
  expect(robots.body).not.toContain('/cal');
});

test('a body that is too large is refused before it is read', async () => {
  const answer = await service
    .browser()
    .request('POST', '/api/v1/sessions', { json: { token: 'x'.repeat(2_000_000) } });
  expect(answer.status).toBe(413);
  expect(answer.json()).toMatchObject({ code: 'REQUEST.TOO_LARGE' });
});

test('every problem code has a page', async () => {
  expect((await service.browser().get('/problems/REQUEST.CONFLICT')).body).toContain('HTTP status 409');
  expect((await service.browser().get('/problems/constructor')).status).toBe(404);
});

test('the log names routes, not people', async () => {
  const observer = await service.signedIn({
    associationId: association.id,
    roles: ['observer'],
    name: 'Quiet Person',
  });
  await observer.get(`/marram-coast/officials/${association.chiefId}?search=Secretname`);
  expect(service.logged()).toContain('"route":"/:slug/officials/:officialId"');
  for (const text of ['Quiet Person', 'Secretname', 'quiet.person@'])
    expect(service.logged()).not.toContain(text);
});
