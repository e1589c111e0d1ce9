import { z } from 'zod';
import { RouteList } from '../../../src/access/route-list';
import { schemaOf, type OpenApiDocument } from '../../../src/web/api/open-api';
import { problemSchema } from '../../../src/web/api/problem-schema';
import { smallAssociation, type SmallAssociation } from '../../database/calendar/small-association';
import { joinWorld, type SlateWorld } from '../../database/slates/slate-world';
import type { Answer, Browser } from '../../support/http/browser';
import { testService, type TestService } from '../../support/http/test-service';

// Goal: what the API says of itself is true. Method: the served description is compared with the routes that the server really
// has, and real answers of every operation are checked against the schemas that stand in the served document.
let service: TestService;
let small: SmallAssociation;
let world: SlateWorld;
let document: OpenApiDocument;
let assignor: Browser;
const answered = new Set<string>();

beforeAll(async () => {
  service = await testService();
  small = await smallAssociation(service.database.tenancy, { slug: 'marram-coast' });
  world = await joinWorld(service.database, service.jobs);
  await world.services.workers.start();
  assignor = await service.signedIn({
    associationId: world.associationId,
    roles: ['assignor', 'administrator'],
  });
  document = (await service.browser().get('/api/v1/openapi.json')).json() as OpenApiDocument;
}, 120_000);

afterAll(async () => {
  await world.services.workers.stop();
  await service.close();
});

const own = { 'sec-fetch-site': 'same-origin' };
type Method = 'GET' | 'POST' | 'PUT' | 'DELETE';

/** Asks an operation and holds the answer against what the document promises for its status. */
async function ask(
  browser: Browser,
  operationId: string,
  url: string,
  sent: Parameters<Browser['request']>[2] = {},
): Promise<Answer> {
  const [path, method] = find(operationId);
  const pattern = new RegExp(`^${path.replace(/\{\w+\}/g, '[^/?]+')}(\\?.*)?$`);
  expect(url).toMatch(pattern);
  const answer = await browser.request(method, url, {
    ...sent,
    headers: { ...own, ...sent.headers },
  });
  const operation = document.paths[path]?.[method.toLowerCase()];
  const promised = operation?.responses[String(answer.status)];
  if (promised === undefined)
    throw new Error(`${operationId} does not promise ${answer.status}: ${answer.body}`);
  const [type] = String(answer.headers['content-type'] ?? '').split(';');
  const schema = promised.content?.[type ?? '']?.schema;
  if (answer.status === 204) expect(answer.body).toBe('');
  else {
    if (schema === undefined) throw new Error(`${operationId} does not promise ${type}`);
    const isProblem = '$ref' in schema;
    const read = isProblem ? problemSchema : z.fromJSONSchema(schema);
    const parsed = read.safeParse(answer.json());
    expect([operationId, parsed.error?.issues ?? []]).toEqual([operationId, []]);
  }
  if (answer.status < 400) answered.add(operationId);
  return answer;
}

function find(operationId: string): [path: string, method: Method] {
  for (const [path, methods] of Object.entries(document.paths)) {
    for (const [method, operation] of Object.entries(methods)) {
      if (operation.operationId === operationId) return [path, method.toUpperCase() as Method];
    }
  }
  throw new Error(`No operation ${operationId}`);
}

test('every route below /api/v1 is in the description, and nothing else', () => {
  const served = service.app
    .get(RouteList)
    .list()
    .filter(({ path }) => path.startsWith('/api/v1/') && path !== '/api/v1/openapi.json')
    .map(({ method, path }) => `${method} ${path.replace(/:(\w+)/g, '{$1}')}`);
  const described = Object.entries(document.paths).flatMap(([path, methods]) =>
    Object.keys(methods).map((method) => `${method.toUpperCase()} ${path}`),
  );
  expect(served.length).toBeGreaterThan(20);
  expect(described.sort()).toEqual(served.sort());
});

test('the description is OpenAPI 3.1 with unique names and every parameter of its paths', () => {
  expect(document.openapi).toBe('3.1.0');
  const operations = Object.entries(document.paths).flatMap(([path, methods]) =>
    Object.values(methods).map((operation) => ({ path, operation })),
  );
  const ids = operations.map(({ operation }) => operation.operationId);
  expect(new Set(ids).size).toBe(ids.length);
  for (const { path, operation } of operations) {
    const inPath = operation.parameters
      .filter((parameter) => parameter.in === 'path')
      .map(({ name }) => name);
    expect([path, inPath]).toEqual([path, [...path.matchAll(/\{(\w+)\}/g)].map(([, name]) => name)]);
    expect([path, Object.keys(operation.responses).some((status) => status.startsWith('2'))]).toEqual([
      path,
      true,
    ]);
  }
});

test('a change of a schema changes the description', () => {
  expect(schemaOf(z.object({ a: z.string() }), 'output')).not.toEqual(
    schemaOf(z.object({ a: z.number() }), 'output'),
  );
});

test('the page for people names every operation', async () => {
  const { body } = await service.browser().get('/api');
  for (const methods of Object.values(document.paths)) {
    for (const { operationId } of Object.values(methods)) expect(body).toContain(`id="${operationId}"`);
  }
});

test('answers of every operation are as described', async () => {
  await world.addOfficial('Ada');
  const umpireId = await world.addOfficial('Bea', { level: 2, may_be_chief: false });
  const gameId = await world.addGame('A1');
  const base = `/api/v1/associations/a${world.associationId}`;

  await ask(assignor, 'readAccount', '/api/v1/account');
  await ask(assignor, 'readAssociation', base);
  const opened = await ask(assignor, 'openSlate', `${base}/slates`, {
    json: { name: 'Weekend', fromDate: '2026-11-28', toDate: '2026-11-29' },
  });
  const { id: slateId } = opened.json() as { id: string };
  const slate = `${base}/slates/${slateId}`;
  await ask(assignor, 'openSlate', `${base}/slates`, {
    json: { name: 'Weekend', fromDate: '2026-11-28', toDate: '2026-11-29' },
  });
  const started = await ask(assignor, 'startBuild', `${slate}/builds`, { json: { seconds: 1 } });
  const { buildId } = started.json() as { buildId: string };
  const deadline = Date.now() + 30_000;
  for (;;) {
    const { state } = (await ask(assignor, 'readBuild', `${slate}/builds/${buildId}`)).json() as {
      state: string;
    };
    if (state === 'done') break;
    if (state === 'failed' || Date.now() > deadline) throw new Error(state);
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  expect((await ask(assignor, 'stopBuild', `${slate}/builds/${buildId}/stop`)).json()).toEqual({
    stopped: false,
  });
  await ask(assignor, 'listBuilds', `${slate}/builds`);
  const proposals = await ask(assignor, 'listProposals', `${slate}/proposals`);
  const [proposal] = (proposals.json() as { items: { id: string }[] }).items;
  await ask(assignor, 'chooseProposal', `${slate}/chosen-proposal`, { json: { proposalId: proposal?.id } });
  await ask(assignor, 'listSlates', `${base}/slates`);
  const read = (await ask(assignor, 'readSlate', slate)).json() as {
    seats: { filled: number };
    version: number;
  };
  expect(read.seats.filled).toBe(2);
  await ask(assignor, 'previewPublication', `${slate}/publication-preview`);
  const key = { 'idempotency-key': 'publish-once-0001' };
  expect((await ask(assignor, 'publishSlate', `${slate}/publications`, { json: {} })).status).toBe(422);
  const json = { version: read.version };
  const first = await ask(assignor, 'publishSlate', `${slate}/publications`, { json, headers: key });
  const again = await ask(assignor, 'publishSlate', `${slate}/publications`, { json, headers: key });
  expect(again.json()).toEqual({ ...(first.json() as object), repeated: true });

  const umpire = await service.signedIn({
    associationId: world.associationId,
    roles: ['official'],
    officialId: umpireId,
  });
  const assignments = await ask(umpire, 'listAssignments', `${base}/officials/${umpireId}/assignments`);
  const [assignment] = (assignments.json() as { items: { id: string; sequence: number }[] }).items;
  const reply = `${base}/officials/${umpireId}/assignments/${assignment?.id}/reply`;
  const stale = await ask(umpire, 'replyToAssignment', reply, { json: { sequence: 9, reply: 'ACCEPTED' } });
  expect(stale.status).toBe(409);
  await ask(umpire, 'replyToAssignment', reply, {
    json: { sequence: assignment?.sequence, reply: 'ACCEPTED' },
  });

  const feeds = `${base}/officials/${umpireId}/feeds`;
  const feed = (await ask(umpire, 'makeFeed', feeds, { json: { name: 'phone' } })).json() as { id: string };
  const fresh = (await ask(umpire, 'rotateFeed', `${feeds}/${feed.id}/rotate`)).json() as {
    id: string;
    address: string;
  };
  expect(fresh.address).toMatch(/^http:\/\/localhost\/cal\/[\w-]{43}\.ics$/);
  const listed = await ask(assignor, 'listFeeds', feeds);
  expect(listed.body).not.toContain(fresh.address.slice(-20));
  await ask(umpire, 'revokeFeed', `${feeds}/${fresh.id}`);
  expect((await ask(umpire, 'revokeFeed', `${feeds}/${fresh.id}`)).status).toBe(404);

  await ask(assignor, 'listOfficials', `${base}/officials`);
  const seen = (await ask(assignor, 'readOfficial', `${base}/officials/${umpireId}`)).json() as {
    contact: unknown;
  };
  expect(seen.contact).not.toBeNull();
  await ask(umpire, 'listAvailability', `${base}/officials/${umpireId}/availability`);
  await ask(assignor, 'listGames', `${base}/games?fromDate=2026-11-28&toDate=2026-11-29`);
  await ask(assignor, 'readGame', `${base}/games/${gameId}`);
  await ask(assignor, 'listDivisions', `${base}/divisions`);
  await ask(assignor, 'listTeams', `${base}/teams`);
  const venues = (await ask(assignor, 'listVenues', `${base}/venues`)).json() as { items: { id: string }[] };
  await ask(assignor, 'readVenue', `${base}/venues/${venues.items[0]?.id}`);
  await bringLevelsIn(base);

  const leaver = await service.signedIn({ associationId: world.associationId, roles: ['observer'] });
  await ask(leaver, 'closeSession', '/api/v1/sessions/current');
  expect((await leaver.get('/api/v1/account')).status).toBe(401);
}, 60_000);

async function bringLevelsIn(base: string): Promise<void> {
  const send = (query: string, csv: string) =>
    ask(assignor, 'bringIn', `${base}/imports${query}`, {
      multipart: {
        boundary: 'cut',
        body: `--cut\r\ncontent-disposition: form-data; name="levels"; filename="levels.csv"\r\ncontent-type: text/csv\r\n\r\n${csv}\r\n--cut--\r\n`,
      },
    });
  const dry = await send('', 'level,name\n6,Sixth\n');
  expect(dry.json()).toMatchObject({ outcome: 'planned', kinds: [{ kind: 'levels', added: ['6'] }] });
  const faulty = await send('?dryRun=false', 'level,name\nseven,Seventh\n');
  expect(faulty.json()).toMatchObject({ outcome: 'refused', faults: [{ file: 'levels.csv', line: 2 }] });
  const stored = await send('?dryRun=false', 'level,name\n6,Sixth\n');
  expect(stored.json()).toMatchObject({ outcome: 'stored' });
}

test('a program gets a session for a one-time link, once', async () => {
  const { rows } = await service.database.owner.query<{ email: string }>('select email from account limit 1');
  const browser = service.browser();
  await browser.get('/sign-in');
  await browser.post('/sign-in', { email: rows[0]?.email ?? '' });
  await service.mailSettled();
  const token = service.mailbox.pop()?.link.split('/').at(-1) ?? '';
  const program = service.browser();
  const opened = await ask(program, 'openSession', '/api/v1/sessions', { json: { token } });
  const { sessionToken } = opened.json() as { sessionToken: string };
  const headers = { authorization: `Bearer ${sessionToken}` };
  expect((await program.get('/api/v1/account', headers)).status).toBe(200);
  expect((await ask(program, 'openSession', '/api/v1/sessions', { json: { token } })).status).toBe(410);
});

test('no operation went unasked', () => {
  const all = Object.values(document.paths).flatMap((methods) =>
    Object.values(methods).map(({ operationId }) => operationId),
  );
  expect([...answered].sort()).toEqual(all.sort());
});

test('an official’s contact is for those who answer for them and themselves', async () => {
  const url = `/api/v1/associations/marram-coast/officials/${small.chiefId}`;
  const contactFor = async (roles: ('observer' | 'assignor' | 'official')[], officialId?: string) => {
    const member = { associationId: small.id, roles, ...(officialId === undefined ? {} : { officialId }) };
    const answer = await (await service.signedIn(member)).get(url);
    return answer.status === 200 ? (answer.json() as { contact: unknown }).contact : answer.status;
  };
  expect(await contactFor(['observer'])).toBeNull();
  expect(await contactFor(['assignor'])).toMatchObject({ phone: '+44 1632 960001' });
  expect(await contactFor(['official'], small.chiefId)).toMatchObject({ phone: '+44 1632 960001' });
  expect(await contactFor(['official'], small.umpireId)).toBe(404);
});

test('errors are problem details with every fault', async () => {
  const url = `/api/v1/associations/a${world.associationId}/slates`;
  const answer = await assignor.request('POST', url, {
    json: { name: '', fromDate: 'Saturday' },
    headers: own,
  });
  expect(answer.status).toBe(422);
  expect(answer.headers['content-type']).toMatch(/^application\/problem\+json/);
  expect(answer.json()).toMatchObject({
    type: 'http://localhost/problems/REQUEST.INVALID',
    title: expect.any(String) as string,
    status: 422,
    code: 'REQUEST.INVALID',
    errors: [{ path: 'name' }, { path: 'fromDate' }, { path: 'toDate' }],
    requestId: answer.headers['x-request-id'],
  });
  expect((await service.browser().get('/api/v1/nothing-here')).json()).toMatchObject({
    code: 'REQUEST.NOT_FOUND',
  });
  const broken = await service.app.inject({
    method: 'POST',
    url: '/api/v1/sessions',
    headers: { 'content-type': 'application/json', host: 'localhost' },
    payload: '{"token":',
  });
  expect(broken.statusCode).toBe(400);
  expect(broken.json()).toMatchObject({ code: 'REQUEST.MALFORMED' });
});
