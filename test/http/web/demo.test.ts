import { mkdtemp, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { SignIn } from '../../../src/access/sign-in';
import { demoLinks } from '../../../src/cli/demo-links';
import { publishComingWeekend } from '../../../src/cli/demo-weekend';
import type { OpenService } from '../../../src/cli/open-service';
import { loadDemo } from '../../../src/demo/load-demo';
import { readConfiguration } from '../../../src/platform/configuration';
import { createLog } from '../../../src/platform/log';
import { testService, type TestService } from '../../support/http/test-service';

// Goal: the demo ends in a published weekend whose links lead somewhere, and starting it again changes nothing. Method: the steps
// of the command on a database of its own, twice, with the tables counted in between; then the links are opened.
let service: TestService;
let open: OpenService;
let folder: string;

beforeAll(async () => {
  service = await testService();
  folder = await mkdtemp(join(tmpdir(), 'crewloom-demo-'));
  open = {
    configuration: readConfiguration({ DATA_DIR: folder }),
    dataSource: service.database.dataSource,
    tenancy: service.database.tenancy,
    jobs: service.jobs,
    clock: service.clock,
    log: createLog({ level: 'silent' }),
    close: async () => undefined,
  };
}, 120_000);

afterAll(async () => {
  await service.close();
  await rm(folder, { recursive: true });
});

async function rowCounts(): Promise<Record<string, number>> {
  const counts: Record<string, number> = {};
  for (const table of [
    'official',
    'game',
    'slate',
    'build',
    'proposal',
    'publication',
    'assignment',
    'feed_token',
  ]) {
    const { rows } = await service.database.owner.query<{ n: number }>(
      `select count(*)::int as n from ${table}`,
    );
    counts[table] = rows[0]?.n ?? -1;
  }
  return counts;
}

test('from nothing to a published weekend with links, once', async () => {
  const told: string[] = [];
  const run = async () => {
    const { associationId } = await loadDemo(open);
    const note = (text: string) => void told.push(text);
    await publishComingWeekend(open, associationId, { seconds: 1, say: note, answer: note });
    const signIn = service.app.get(SignIn);
    return demoLinks(open, { associationId, url: 'http://localhost', signIn });
  };
  const first = await run();
  const counts = await rowCounts();
  expect(counts).toMatchObject({ build: 1, proposal: 1, publication: 11, feed_token: 1 });
  expect(told.join('\n')).toMatch(/seats filled[^]*Driving \d+ km[^]*Built in/);

  const second = await run();
  expect(await rowCounts()).toEqual(counts);
  expect(told.join('\n')).toContain('was published before');
  expect(second.official?.feed).toBe(first.official?.feed);
  expect((await stat(join(folder, 'demo-links.json'))).mode & 0o777).toBe(0o600);

  const desk = service.browser();
  const link = (second.desk ?? '').replace('http://localhost', '');
  await desk.get(link);
  const home = await desk.post(link.replace(/\?.*/, ''), { next: '/marram-coast' });
  expect(home.location).toBe('/marram-coast');
  const list = await desk.get('/marram-coast');
  expect(list.body).toContain('without an answer');
  const slate = /\/marram-coast\/slates\/[0-9a-f-]{36}/.exec(list.body)?.[0] ?? '';
  expect((await desk.get(slate)).body).not.toContain('These crews break rules');

  const chief = service.browser();
  const briefing = (second.official?.briefing ?? '').replace('http://localhost', '');
  await chief.get(briefing);
  const next = decodeURIComponent(briefing.split('next=')[1] ?? '');
  const opened = await chief.post(briefing.replace(/\?.*/, ''), { next });
  expect(opened.location).toBe(next);
  expect((await chief.get(next)).status).toBe(200);
}, 120_000);
