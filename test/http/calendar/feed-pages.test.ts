import { smallAssociation, type SmallAssociation } from '../../database/calendar/small-association';
import { testService, type TestService } from '../../support/http/test-service';

// Goal: an official makes, replaces and ends calendar addresses on their own page, and nobody else does.
// Method: the whole service, with its guards and form tokens, asked as a browser would.
let service: TestService;
let ours: SmallAssociation;
const path = '/marram-coast/my-calendar';

beforeAll(async () => {
  service = await testService();
  ours = await smallAssociation(service.database.tenancy, { slug: 'marram-coast' });
}, 120_000);
afterAll(() => service.close());

const official = () =>
  service.signedIn({
    associationId: ours.id,
    roles: ['official'],
    officialId: ours.chiefId,
    name: 'Ida Sandell',
  });

it('shows a new address once, with all three ways to use it and what to expect', async () => {
  const browser = await official();
  const empty = await browser.get(path);
  expect(empty.status).toBe(200);
  expect(empty.body).toContain('You have none yet');
  expect(empty.body).toContain('it may take a day in some calendar services');
  const made = await browser.post(path, { name: 'phone' });
  expect(made.status).toBe(200);
  expect(made.headers['cache-control']).toBe('no-store');
  const [, secret] = /href="webcal:\/\/localhost\/cal\/([\w-]{43})\.ics"/.exec(made.body) ?? [];
  expect(secret).toBeDefined();
  expect(made.body).toContain(`http://localhost/cal/${secret}.ics</code>`);
  const again = await browser.get(path);
  expect(again.body).toContain('phone');
  expect(again.body).toContain('Not used yet');
  expect(again.body).not.toContain(secret);

  const [, id] = /my-calendar\/([\w-]{36})\/rotate/.exec(again.body) ?? [];
  const rotated = await browser.post(`${path}/${id}/rotate`);
  expect(rotated.status).toBe(200);
  expect(rotated.body).toMatch(/webcal:\/\/localhost\/cal\/[\w-]{43}\.ics/);
  expect(rotated.body).not.toContain(secret);
  const [, newId] = /my-calendar\/([\w-]{36})\/revoke/.exec(rotated.body) ?? [];
  const ended = await browser.post(`${path}/${newId}/revoke`);
  expect(ended.status).toBe(303);
  expect((await browser.get(path)).body).toContain('You have none yet');
  expect((await browser.post(`${path}/${newId}/revoke`)).status).toBe(404);
  expect(service.logged()).not.toContain(secret);
});

it('refuses an eleventh address and says what to do', async () => {
  const browser = await service.signedIn({
    associationId: ours.id,
    roles: ['official'],
    officialId: ours.umpireId,
  });
  await browser.get(path);
  for (let count = 0; count < 10; count += 1)
    expect((await browser.post(path, { name: `${count}` })).status).toBe(200);
  const refused = await browser.post(path, { name: 'one more' });
  expect(refused.status).toBe(409);
  expect(refused.body).toContain('You have 10 addresses already');
});

it('is closed to who is not an official, and to forms from elsewhere', async () => {
  const assignor = await service.signedIn({ associationId: ours.id, roles: ['assignor'] });
  expect((await assignor.get(path)).status).toBe(403);
  const nobody = await service.browser().get(path);
  expect([302, 303, 401]).toContain(nobody.status);
  const foreign = await service.browser().request('POST', path, { form: { name: 'x' } });
  expect(foreign.status).toBeGreaterThanOrEqual(300);
});
