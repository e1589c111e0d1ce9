import type { AddressInfo } from 'node:net';
import type { Browser, Page } from 'playwright-core';
import { addMember, testService, type TestService } from '../../support/http/test-service';
import { describeInBrowser, faultsOfPage, startChromium } from '../../support/browser/chromium';
import { joinWorld, type SlateWorld } from '../../database/slates/slate-world';

// Goal: the assignor's way from signing in to a published weekend and the official's answer, in a real browser, on a laptop and on
// a phone. Method: the whole service on a port, the real queue and solver; each page that is passed is checked with axe, for
// its width, and for anything that the content security policy stopped.
describeInBrowser('a weekend in the browser', () => {
  let service: TestService;
  let chromium: Browser;
  let origin: string;

  beforeAll(async () => {
    service = await testService();
    await service.app.listen(0, '127.0.0.1');
    const { port } = service.app.getHttpServer().address() as AddressInfo;
    origin = `http://localhost:${port}`;
    chromium = await startChromium();
  }, 120_000);

  afterAll(async () => {
    await chromium.close();
    await service.close();
  });

  test('a faulty page is caught', async () => {
    const page = await (await chromium.newContext({ viewport: { width: 360, height: 800 } })).newPage();
    await page.setContent(
      '<html><body><img src="x.png"><p style="width: 900px; color: #aaa">pale</p></body></html>',
    );
    const faults = (await faultsOfPage(page)).join('\n');
    for (const fault of ['image-alt', 'color-contrast', 'html-has-lang', 'pixels wider'])
      expect(faults).toContain(fault);
  });

  test.each([
    [1280, 'light'],
    [360, 'dark'],
  ] as const)(
    'at %d pixels, %s',
    async (width, colorScheme) => {
      const world = await joinWorld(service.database, service.jobs);
      await furnish(world);
      const slug = `a${world.associationId}`;
      await world.services.workers.start();
      const names = { assignor: `Asta ${width}`, official: `Official ${width}` };
      await addMember(service.database, {
        associationId: world.associationId,
        roles: ['assignor'],
        name: names.assignor,
      });
      const complaints: string[] = [];
      const open = async () => {
        const context = await chromium.newContext({
          viewport: { width, height: 800 },
          colorScheme,
          reducedMotion: 'reduce',
        });
        const page = await context.newPage();
        page.on('console', (message) => {
          if (message.type() === 'error') complaints.push(message.text());
        });
        page.on('pageerror', (error) => complaints.push(error.message));
        return page;
      };
      const look = async (page: Page, name: string) =>
        expect([name, await faultsOfPage(page)]).toEqual([name, []]);

      const page = await open();
      await signIn(page, names.assignor);
      await look(page, 'home');
      await page.getByLabel('Name').fill('Weekend');
      await page.getByLabel('First day').fill('2026-11-28');
      await page.getByLabel('Last day').fill('2026-11-29');
      await page.getByRole('button', { name: 'Open it' }).click();
      await page.getByRole('heading', { name: 'Weekend', exact: true }).waitFor();
      await look(page, 'slate without crews');

      for (const build of ['Build 1', 'Build 2']) {
        await page.getByLabel('Seconds to spend').fill('1');
        await page.getByRole('button', { name: 'Build', exact: true }).click();
        // Without a touch: the page follows the build by itself and asks again when it is over.
        await page.getByText('It is built.').waitFor({ timeout: 30_000 });
        await look(page, build);
        await page.getByRole('link', { name: 'See the crews' }).click();
      }
      await page.getByRole('button', { name: 'Choose Build 2' }).click();
      await page.getByText('chosen').waitFor();
      await look(page, 'slate with crews');

      await page.getByRole('link', { name: 'Look over and publish' }).click();
      await look(page, 'publication');
      await page.getByRole('button', { name: 'Publish and tell them' }).click();
      await page.getByText('Everybody knows how it stands.').waitFor();
      await look(page, 'published slate');

      const { rows } = await service.database.owner.query<{ official_id: string }>(
        'select official_id from assignment where association_id = $1 order by starts_at, seat limit 1',
        [world.associationId],
      );
      const officialId = rows[0]?.official_id ?? '';
      await addMember(service.database, {
        associationId: world.associationId,
        roles: ['official'],
        officialId,
        name: names.official,
      });
      const phone = await open();
      await signIn(phone, names.official);
      await phone.getByRole('heading', { name: 'My games' }).waitFor();
      await look(phone, 'my games');
      await phone.getByRole('button', { name: 'I take it' }).first().click();
      await phone.getByText('You have accepted.').first().waitFor();
      await look(phone, 'my games, accepted');
      await phone.getByRole('link', { name: 'Briefing' }).first().click();
      await phone.getByRole('heading', { name: 'Crew', exact: true }).waitFor();
      await look(phone, 'briefing');

      await page.reload();
      await page.getByText('accepted', { exact: true }).first().waitFor();
      for (const path of [
        'officials',
        `officials/${officialId}`,
        'venues',
        'games?fromDate=2026-11-28',
        'imports',
      ]) {
        await page.goto(`${origin}/${slug}/${path}`);
        await look(page, path);
      }
      for (const path of ['account', 'api', 'no-such-page/at/all']) {
        await page.goto(`${origin}/${path}`);
        await look(page, path);
      }
      await world.services.workers.stop();
      // The page that is missing on purpose is the only thing that a browser may complain of.
      expect(complaints.filter((text) => !text.includes('404'))).toEqual([]);
    },
    120_000,
  );

  async function signIn(page: Page, name: string): Promise<void> {
    await page.goto(`${origin}/sign-in`);
    expect(await faultsOfPage(page)).toEqual([]);
    await page.getByLabel('E-mail address').fill(`${name.toLowerCase().replace(' ', '.')}@members.example`);
    await page.getByRole('button', { name: 'Send me a link' }).click();
    await page.getByRole('heading', { name: 'Look into your mail' }).waitFor();
    await service.mailSettled();
    const link = service.mailbox.pop()?.link ?? '';
    await page.goto(link.replace('http://localhost', origin));
    expect(await faultsOfPage(page)).toEqual([]);
    await page.getByRole('button', { name: 'Sign me in' }).click();
    await page.getByRole('link', { name: name }).waitFor();
  }
});

async function furnish(world: SlateWorld): Promise<void> {
  for (const name of ['Ada', 'Cleo', 'Finn']) await world.addOfficial(name);
  for (const name of ['Bea', 'Dora']) await world.addOfficial(name, { level: 2, may_be_chief: false });
  await world.addGame('P1');
  await world.addGame('P2', { starts_at: '2026-11-28T16:00:00Z', local_time: '17:00' });
  await world.addGame('P3', {
    local_date: '2026-11-29',
    starts_at: '2026-11-29T10:00:00Z',
    local_time: '11:00',
  });
}
