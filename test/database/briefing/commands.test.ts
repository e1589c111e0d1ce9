import { CommanderError, type Command } from 'commander';
import ICAL from 'ical.js';
import { briefingCommand } from '../../../src/cli/briefing.command';
import { feedCommand } from '../../../src/cli/feed.command';
import { smallAssociation } from '../calendar/small-association';
import { testDatabase, type TestDatabase } from '../../support/database/test-database';
import { byteFaults } from '../../unit/calendar/ical-lines';

// Goal: `feed` and `briefing` print what was asked for and nothing else, or say what is not there with exit
// code 2. Method: the commands themselves on a database of their own, their output caught.
let database: TestDatabase;
const environment = { ...process.env };

beforeAll(async () => {
  database = await testDatabase();
  await smallAssociation(database.tenancy, { slug: 'marram-coast', umpireBirthDate: '2011-05-01' });
  process.env = { ...environment, DATABASE_URL: database.ownerUrl, LOG_LEVEL: 'silent' };
  delete process.env['PUBLIC_URL'];
}, 120_000);
afterAll(async () => {
  process.env = environment;
  await database.close();
});

async function run(
  command: Command,
  ...args: string[]
): Promise<{ out: string; err: string; exitCode: number }> {
  let [out, err, exitCode] = ['', '', 0];
  const spy = jest.spyOn(process.stdout, 'write').mockImplementation((chunk) => {
    out += String(chunk);
    return true;
  });
  command
    .exitOverride()
    .configureOutput({ writeErr: (text) => (err += text), writeOut: (text) => (out += text) });
  try {
    await command.parseAsync(args, { from: 'user' });
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    ({ exitCode } = error);
  } finally {
    spy.mockRestore();
  }
  return { out, err, exitCode };
}

it('feed prints the calendar byte for byte', async () => {
  const { out, exitCode } = await run(feedCommand(), '101');
  expect(exitCode).toBe(0);
  expect(byteFaults(out)).toEqual([]);
  const calendar = new ICAL.Component(ICAL.parse(out) as unknown[]);
  // Games lie in the past or future of the day on which this runs; the calendar is whole either way.
  expect(calendar.getFirstPropertyValue('name')).toBe('Marram Coast: my games');
});

it('briefing prints text, or one HTML file', async () => {
  const text = await run(briefingCommand(), 'MC-1042', '--association', 'marram-coast');
  expect(text.out).toContain('THE CLOCK OF THE DAY');
  expect(text.out).toContain('Ida Sandell: leave home by now');
  const html = await run(briefingCommand(), 'MC-1042', '--html');
  expect(html.out).toMatch(/^<!doctype html>\n<html lang="en-GB">/);
  expect(html.out).toContain('<style>');
  expect(html.out).not.toMatch(/<link|<script|<img/);
});

it.each([
  ['feed', () => run(feedCommand(), '999'), 'Marram Coast has no official 999.'],
  ['briefing', () => run(briefingCommand(), 'nowhere'), 'Marram Coast has no game nowhere.'],
  ['feed', () => run(feedCommand(), '101', '--association', 'x'), 'There is no association "x"'],
])('%s says what is not there', async (_, asked, words) => {
  const { out, err, exitCode } = await asked();
  expect(out).toBe('');
  expect(err).toContain(words);
  expect(exitCode).toBe(2);
});
