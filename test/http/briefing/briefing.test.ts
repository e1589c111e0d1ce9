import { randomUUID } from 'node:crypto';
import { smallAssociation, type SmallAssociation } from '../../database/calendar/small-association';
import { testService, type TestService } from '../../support/http/test-service';

// Goal: the briefing opens for the crew of its game, observers and assignors, each seeing what they may.
// Method: the whole service with two associations; one game whose umpire is a minor.
let service: TestService;
let ours: SmallAssociation;
let theirs: SmallAssociation;

beforeAll(async () => {
  service = await testService();
  const { tenancy } = service.database;
  ours = await smallAssociation(tenancy, { slug: 'marram-coast', umpireBirthDate: '2011-05-01' });
  theirs = await smallAssociation(tenancy, { slug: 'elsewhere' });
}, 120_000);
afterAll(() => service.close());

const path = () => `/marram-coast/games/${ours.gameId}/briefing`;

it('gives the chief the whole sheet with their own way, and the guardian instead of the minor’s number', async () => {
  const chief = await service.signedIn({
    associationId: ours.id,
    roles: ['official'],
    officialId: ours.chiefId,
  });
  const { status, body } = await chief.get(path());
  expect(status).toBe(200);
  for (const text of [
    'Harbour Gulls v Dune Runners',
    'MC-1042, Under 14',
    '18:30, Saturday 28 November 2026 (Europe/London, GMT)',
    'Saltmarsh Hall, Court 2, 4 Reed Lane, Marram',
    'say “white”',
    'Ida Sandell: leave home by now',
    'Marram Coast estimate',
    'a minor; through the guardian: Pat Thrift, pat@thrift.example',
    'Robin Thrift is a minor: no shared changing room',
    '4 × 8 min',
    '4 Reed Lane, Marram, gate 2',
    'Ask before tip-off who the first aider is',
    'FIBA Official Basketball Rules 2024, Art. 46',
  ]) {
    expect(body).toContain(text);
  }
  expect(body).not.toContain('Robin Thrift: leave home');
  expect(body).not.toContain('Private Row');
  expect(body.match(/type="checkbox"/g)?.length).toBeGreaterThan(30);
  // Nothing that the content security policy would stop.
  expect(body).not.toMatch(/<style|<[^>]* style=|<script(?![^>]*src=)/);
});

it('gives the assignor both ways, and the observer neither ways nor numbers', async () => {
  const assignor = await service.signedIn({ associationId: ours.id, roles: ['assignor'] });
  const all = (await assignor.get(path())).body;
  expect(all).toContain('Ida Sandell: leave home by now');
  expect(all).toContain('+44 1632 960001');
  const observer = await service.signedIn({ associationId: ours.id, roles: ['observer'] });
  const watched = await observer.get(path());
  expect(watched.status).toBe(200);
  for (const text of ['leave home', '1632', 'thrift.example']) expect(watched.body).not.toContain(text);
});

it('is closed to others: treasurers, other associations, other officials, nobody', async () => {
  const treasurer = await service.signedIn({ associationId: ours.id, roles: ['treasurer'] });
  expect((await treasurer.get(path())).status).toBe(403);
  const stranger = await service.signedIn({
    associationId: theirs.id,
    roles: ['official', 'assignor'],
    officialId: theirs.chiefId,
  });
  expect((await stranger.get(path())).status).toBe(404);
  expect((await stranger.get(`/elsewhere/games/${ours.gameId}/briefing`)).status).toBe(404);
  expect((await stranger.get(`/elsewhere/games/${theirs.gameId}/briefing`)).status).toBe(200);
  const nobody = await service.browser().get(path());
  expect(nobody.body).not.toContain('Harbour Gulls');
  expect(nobody.status).not.toBe(200);
});

it('is closed again to an official whose assignment has ended', async () => {
  const umpire = await service.signedIn({
    associationId: ours.id,
    roles: ['official'],
    officialId: ours.umpireId,
  });
  expect((await umpire.get(path())).status).toBe(200);
  await service.database.owner.query(
    `update assignment set ended_at = now(), end_reason = 'replaced' where id = $1`,
    [ours.umpireAssignmentId],
  );
  expect((await umpire.get(path())).status).toBe(403);
});

it('knows no other games', async () => {
  const assignor = await service.signedIn({
    associationId: ours.id,
    roles: ['assignor'],
    name: 'Second Assignor',
  });
  expect((await assignor.get(`/marram-coast/games/${randomUUID()}/briefing`)).status).toBe(404);
  expect((await assignor.get('/marram-coast/games/MC-1042/briefing')).status).toBe(404);
});
