import { smallAssociation, type SmallAssociation } from '../../database/calendar/small-association';
import { addMember, testService, type TestService } from '../../support/http/test-service';

// Goal: signing in by a one-time link cannot be misused. Method: the whole application and a real database; the clock is moved
// by hand, and what would be mailed lies in a mailbox.
let service: TestService;
let association: SmallAssociation;

beforeAll(async () => {
  service = await testService();
  association = await smallAssociation(service.database.tenancy, { slug: 'marram-coast' });
  await addMember(service.database, {
    associationId: association.id,
    roles: ['assignor'],
    name: 'Ada Lind',
  });
}, 120_000);

afterAll(() => service.close());

const address = 'ada.lind@members.example';

async function askForLink(email: string, next = '/'): Promise<string | undefined> {
  const browser = service.browser();
  await browser.get('/sign-in');
  await browser.post('/sign-in', { email, next });
  await service.mailSettled();
  const link = service.mailbox.pop()?.link;
  return link === undefined ? undefined : link.replace('http://localhost', '');
}

test('the answer is the same whether or not the address is known', async () => {
  const browser = service.browser();
  await browser.get('/sign-in');
  const known = await browser.post('/sign-in', { email: address });
  const unknown = await browser.post('/sign-in', { email: 'nobody@members.example' });
  await service.mailSettled();
  expect(service.mailbox.splice(0).map((message) => message.email)).toEqual([address]);
  expect(known.status).toBe(200);
  expect(unknown.status).toBe(200);
  expect(unknown.body).toBe(known.body);
});

test('opening a link three times changes nothing; the button signs in once', async () => {
  const link = await askForLink(address, '/marram-coast/officials');
  expect(link).toBeDefined();
  const path = link ?? '';
  const rows = () => service.database.owner.query('select * from sign_in_link order by token_hash');
  const before = await rows();
  for (let time = 0; time < 3; time += 1) {
    const scanner = service.browser();
    const opened = await scanner.get(path);
    expect(opened.status).toBe(200);
    expect(opened.body).toContain('Sign me in');
    expect(scanner.cookie('crewloom-session')).toBeUndefined();
  }
  expect((await rows()).rows).toEqual(before.rows);

  const browser = service.browser();
  await browser.get(path);
  const used = await browser.post(path.replace(/\?.*/, ''), { next: '/marram-coast/officials' });
  expect(used).toMatchObject({ status: 303, location: '/marram-coast/officials' });
  expect(String(used.headers['set-cookie'])).toMatch(/HttpOnly/);
  expect(String(used.headers['set-cookie'])).toMatch(/SameSite=Lax/);
  expect((await browser.get('/account')).body).toContain('Ada Lind');

  const second = service.browser();
  const opened = await second.get(path);
  expect(opened.status).toBe(410);
  await second.get('/sign-in');
  const reused = await second.post(path.replace(/\?.*/, ''));
  expect(reused.status).toBe(410);
  expect(second.cookie('crewloom-session')).toBeUndefined();
});

test('of two who press at once one is let in', async () => {
  const path = ((await askForLink(address)) ?? '').replace(/\?.*/, '');
  const browsers = [service.browser(), service.browser(), service.browser()];
  for (const browser of browsers) await browser.get(path);
  const answers = await Promise.all(browsers.map((browser) => browser.post(path)));
  expect(answers.map(({ status }) => status).sort()).toEqual([303, 410, 410]);
});

test('a link is good for 15 minutes', async () => {
  const path = ((await askForLink(address)) ?? '').replace(/\?.*/, '');
  const browser = service.browser();
  service.clock.advanceMinutes(14);
  expect((await browser.get(path)).status).toBe(200);
  service.clock.advanceMinutes(1);
  expect((await browser.get(path)).status).toBe(410);
  await browser.get('/sign-in');
  expect((await browser.post(path)).status).toBe(410);
});

test('a mailbox is not flooded: five live links at most', async () => {
  service.clock.advanceMinutes(60);
  const links = [];
  for (let time = 0; time < 7; time += 1) links.push(await askForLink(address));
  expect(links.filter((link) => link !== undefined)).toHaveLength(5);
  service.clock.advanceMinutes(60);
});

test.each(['//evil.example/', 'https://evil.example/', '/\\evil.example', '/\t/evil.example'])(
  'nobody is led away after signing in: %j',
  async (next) => {
    service.clock.advanceMinutes(60);
    const path = ((await askForLink(address)) ?? '').replace(/\?.*/, '');
    const browser = service.browser();
    await browser.get(path);
    expect((await browser.post(path, { next })).location).toBe('/');
  },
);

test('only the hash of a token is stored, and no token is logged', async () => {
  service.clock.advanceMinutes(60);
  const path = ((await askForLink(address)) ?? '').replace(/\?.*/, '');
  const token = path.split('/').at(-1) ?? '';
  expect(token).toHaveLength(43);
  const browser = service.browser();
  await browser.get(path);
  await browser.post(path);
  const session = browser.cookie('crewloom-session') ?? '';
  const stored = await service.database.owner.query(
    `select encode(token_hash, 'hex') as hash, l::text as text from sign_in_link l
     union all select encode(token_hash, 'hex'), s::text from session s`,
  );
  const text = JSON.stringify(stored.rows);
  expect(text.length).toBeGreaterThan(100);
  for (const secret of [token, session]) {
    expect(secret).not.toBe('');
    expect(text).not.toContain(secret);
    expect(service.logged()).not.toContain(secret);
  }
  expect(service.logged()).not.toContain(address);
  expect(service.logged()).toContain('/sign-in/:token');
});

test('a session ends after 30 days, when it is signed out, and when the account is disabled', async () => {
  const browser = await service.signedIn({
    associationId: association.id,
    roles: ['observer'],
    name: 'Old Hand',
  });
  expect((await browser.get('/account')).status).toBe(200);
  service.clock.advanceMinutes(30 * 24 * 60 - 1);
  expect((await browser.get('/account')).status).toBe(200);
  service.clock.advanceMinutes(1);
  expect((await browser.get('/account')).location).toBe('/sign-in?next=%2Faccount');

  const second = await service.signedIn({
    associationId: association.id,
    roles: ['observer'],
    name: 'Leaver',
  });
  const token = second.cookie('crewloom-session') ?? '';
  await second.get('/account');
  expect((await second.post('/sign-out')).location).toBe('/sign-in');
  const thief = service.browser();
  thief.setCookie('crewloom-session', token);
  expect((await thief.get('/account')).status).toBe(303);

  const third = await service.signedIn({
    associationId: association.id,
    roles: ['observer'],
    name: 'Barred',
  });
  await service.database.owner.query(`update account set disabled_at = now() where display_name = 'Barred'`);
  expect((await third.get('/account')).status).toBe(303);
});

test('one session is signed out from another, never that of somebody else', async () => {
  const member = { associationId: association.id, roles: ['observer'] as const, name: 'Two Devices' };
  const first = await service.signedIn(member);
  const list = await first.get('/account');
  const id = /sessions\/([0-9a-f]{16})\/sign-out/.exec(list.body)?.[1];
  // Its own session is signed out by the plain button, so there is no such form yet.
  expect(id).toBeUndefined();
  const stranger = await service.signedIn({ ...member, name: 'Stranger' });
  await stranger.get('/account');
  const { rows } = await service.database.owner.query<{ id: string }>(
    `select left(encode(s.token_hash, 'hex'), 16) as id from session s join account a on a.id = s.account_id
      where a.display_name = 'Two Devices'`,
  );
  expect((await stranger.post(`/account/sessions/${rows[0]?.id}/sign-out`)).status).toBe(404);
  expect((await first.get('/account')).status).toBe(200);
  await first.post(`/account/sessions/${rows[0]?.id}/sign-out`);
  expect((await first.get('/account')).status).toBe(303);
});
