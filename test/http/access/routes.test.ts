import { randomUUID } from 'node:crypto';
import { RouteList, type RouteEntry } from '../../../src/access/route-list';
import { roles, type Role } from '../../../src/access/role';
import { smallAssociation, type SmallAssociation } from '../../database/calendar/small-association';
import type { Browser } from '../../support/http/browser';
import { testService, type TestService } from '../../support/http/test-service';

// Goal: every route is open to whom its entry names and to nobody else, and never to another association. Method: all routes are
// taken from the application itself and asked for as nobody, as each role, and with another association's names and ids.
let service: TestService;
let ours: SmallAssociation;
let theirs: SmallAssociation;
let routes: RouteEntry[];
const browsers = new Map<Role, Browser>();

beforeAll(async () => {
  service = await testService();
  ours = await smallAssociation(service.database.tenancy, { slug: 'marram-coast' });
  theirs = await smallAssociation(service.database.tenancy, { slug: 'elsewhere' });
  for (const role of roles) {
    const official = role === 'official' ? { officialId: ours.chiefId } : {};
    browsers.set(role, await service.signedIn({ associationId: ours.id, roles: [role], ...official }));
  }
  routes = service.app.get(RouteList).list();
}, 120_000);

afterAll(() => service.close());

/** The route's address with its parameters filled in. */
function address(route: RouteEntry, slug: string, ids: Readonly<Record<string, string>>): string {
  return route.path.replace(/:(\w+)/g, (_, name: string) =>
    name === 'slug' ? slug : (ids[name] ?? randomUUID()),
  );
}

const isTenant = (route: RouteEntry) => route.path.includes(':slug');

test('every route says who may take it, and the tenants’ ones name roles', () => {
  expect(routes.length).toBeGreaterThan(40);
  for (const { path, allowances } of routes) {
    expect([path, allowances.length > 0]).toEqual([path, true]);
    const isOpen = allowances.includes('anyone') || allowances.includes('signed-in');
    expect([path, isOpen]).toEqual([path, !path.includes(':slug')]);
  }
});

test('only signing in, the description of the API and of problems are open to anyone', () => {
  const open = routes.filter(({ allowances }) => allowances.includes('anyone'));
  expect(open.map(({ method, path }) => `${method} ${path}`).sort()).toEqual([
    'GET /api',
    'GET /api/v1/openapi.json',
    'GET /problems/:code',
    'GET /sign-in',
    'GET /sign-in/:token',
    'POST /api/v1/sessions',
    'POST /sign-in',
    'POST /sign-in/:token',
  ]);
});

test('whoever is not signed in is asked to be, or told 401', async () => {
  for (const route of routes.filter(({ allowances }) => !allowances.includes('anyone'))) {
    const browser = service.browser();
    const url = address(route, 'marram-coast', {});
    const answer = await browser.request(route.method as 'GET', url);
    const expected = route.path.startsWith('/api/') ? 401 : 303;
    expect([route.method, route.path, answer.status]).toEqual([route.method, route.path, expected]);
    if (expected === 303) expect(answer.location).toMatch(/^\/sign-in/);
  }
});

test.each(roles)('the role %s reads what its entries name and nothing else', async (role) => {
  const browser = browsers.get(role);
  if (browser === undefined) throw new Error(role);
  let [allowed, refused] = [0, 0];
  for (const route of routes.filter((entry) => isTenant(entry) && entry.method === 'GET')) {
    const { allowances, path } = route;
    const answer = await browser.get(address(route, 'marram-coast', {}));
    const isAllowed = allowances.includes('member') || allowances.includes(role);
    if (isAllowed) {
      expect([path, [401, 403, 500].includes(answer.status)]).toEqual([path, false]);
      allowed += 1;
    } else {
      // An official's own pages answer 404 for anybody else's, so that ids tell nothing.
      const isOther = allowances.includes('own official') && role === 'official';
      expect([path, answer.status]).toEqual([path, isOther ? 404 : 403]);
      refused += 1;
    }
  }
  expect(allowed).toBeGreaterThan(3);
  expect(refused).toBeGreaterThan(0);
});

test('another association answers as if it did not exist, whatever one’s roles', async () => {
  for (const browser of browsers.values()) {
    for (const route of routes.filter((entry) => isTenant(entry) && entry.method === 'GET')) {
      const real = await browser.get(address(route, 'elsewhere', {}));
      const invented = await browser.get(address(route, 'nowhere', {}));
      expect([route.path, real.status, invented.status]).toEqual([route.path, 404, 404]);
    }
  }
});

test('ids of another association lead nowhere', async () => {
  const ids = { gameId: theirs.gameId, venueId: theirs.venueId, officialId: theirs.chiefId };
  const own = { gameId: ours.gameId, venueId: ours.venueId, officialId: ours.chiefId };
  const named = routes.filter(
    (route) => route.method === 'GET' && /:(gameId|venueId|officialId)/.test(route.path),
  );
  expect(named.length).toBeGreaterThan(5);
  const assignor = await service.signedIn({ associationId: ours.id, roles: ['assignor', 'administrator'] });
  for (const route of named) {
    expect([route.path, (await assignor.get(address(route, 'marram-coast', own))).status]).toEqual([
      route.path,
      200,
    ]);
    expect([route.path, (await assignor.get(address(route, 'marram-coast', ids))).status]).toEqual([
      route.path,
      404,
    ]);
  }
});

test('a text that is no id is not found, never a fault of ours', async () => {
  const assignor = await service.signedIn({
    associationId: ours.id,
    roles: ['assignor', 'administrator', 'observer'],
  });
  const ids = new Proxy({}, { get: () => `x'%22` }) as Record<string, string>;
  for (const route of routes.filter((entry) => isTenant(entry) && /:\w+Id/.test(entry.path))) {
    const answer =
      route.method === 'GET'
        ? await assignor.get(address(route, 'marram-coast', ids))
        : await assignor.request(route.method as 'POST', address(route, 'marram-coast', ids), {
            headers: { 'sec-fetch-site': 'same-origin' },
            ...(route.path.startsWith('/api/') ? { json: {} } : {}),
          });
    expect([route.path, [403, 404, 422].includes(answer.status)]).toEqual([route.path, true]);
  }
});
