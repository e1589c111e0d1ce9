// Goal: local times become the right instants, and gaps and overlaps are told apart.
// Source of every vector: IANA time zone database, release 2026f. All of them except those of the four zones that gave up changing
// in 2026 agree with release 2025b as Python's zoneinfo reads it.
import { resolve } from 'node:path';
import { resolveLocalTime, localParts, type LocalTimeResult } from '../../../src/platform/local-time';
import { outputOf, spawnTypescript } from '../../support/typescript-process';
import { isKnownZone, zoneDataVersion, zonePeriods } from '../../../src/platform/time-zones';

const at = (zone: string, date: string, time: string) => resolveLocalTime({ date, time, zone });

/** The answer in one line: instants in UTC, to the minute. */
function inWords(result: LocalTimeResult): string {
  const utc = (instant: Date) => instant.toISOString().slice(0, 16);
  switch (result.kind) {
    case 'instant':
      return utc(result.instant);
    case 'overlap':
      return `${utc(result.earlier.instant)} or ${utc(result.later.instant)}`;
    case 'gap':
      return `skips ${result.skippedMinutes} to ${result.resumesAt.date} ${result.resumesAt.time} at ${utc(result.changesAt)}`;
    case 'invalid':
      return result.faults.map(({ field }) => `bad ${field}`).join(', ');
  }
}

test('the tables are those that the vectors were taken from', () => {
  expect(zoneDataVersion).toBe('2026f');
});

// Instants of the changes from 2026 on.
const changes: Record<string, string[]> = {
  'Europe/Berlin': ['2026-03-29T01:00', '2026-10-25T01:00', '2027-03-28T01:00', '2027-10-31T01:00'],
  'Europe/London': ['2026-03-29T01:00', '2026-10-25T01:00', '2027-03-28T01:00', '2027-10-31T01:00'],
  'America/New_York': ['2026-03-08T07:00', '2026-11-01T06:00', '2027-03-14T07:00', '2027-11-07T06:00'],
  'America/Chicago': ['2026-03-08T08:00', '2026-11-01T07:00', '2027-03-14T08:00', '2027-11-07T07:00'],
  'America/Los_Angeles': ['2026-03-08T10:00', '2026-11-01T09:00', '2027-03-14T10:00', '2027-11-07T09:00'],
  'Australia/Sydney': ['2026-04-04T16:00', '2026-10-03T16:00', '2027-04-03T16:00'],
  'Pacific/Auckland': ['2026-04-04T14:00', '2026-09-26T14:00'],
  'Australia/Lord_Howe': ['2026-04-04T15:00', '2026-10-03T15:30'],
  'America/Santiago': ['2026-04-05T03:00', '2026-09-06T04:00'],
  'Africa/Cairo': ['2026-04-23T22:00', '2026-10-29T21:00'],
};
test.each(Object.entries(changes))('%s changes its clocks when the database says', (zone, expected) => {
  const from = Date.parse('2026-01-01T00:00Z');
  const found = zonePeriods(zone)
    .filter(({ startsAt }) => startsAt >= from)
    .slice(0, expected.length)
    .map(({ startsAt }) => new Date(startsAt).toISOString().slice(0, 16));
  expect(found).toEqual(expected);
});

test.each(['America/Phoenix', 'America/Regina', 'America/Sao_Paulo'])('%s has no change left', (zone) => {
  expect(zonePeriods(zone).every(({ startsAt }) => startsAt < Date.parse('2026-01-01'))).toBe(true);
});

// These zones gave up changing in 2026; tables of before that are an hour wrong in winter.
test.each([
  ['America/Vancouver', '11:00', -420],
  ['America/Winnipeg', '13:00', -300],
  ['America/Edmonton', '12:00', -360],
  ['America/Havana', '14:00', -240],
])('%s keeps its summer clock in December 2026', (zone, time, offsetMinutes) => {
  const instant = new Date('2026-12-05T18:00:00Z');
  expect(localParts(instant, zone)).toMatchObject({ date: '2026-12-05', time, offsetMinutes });
  expect(at(zone, '2026-12-05', time)).toEqual({ kind: 'instant', instant, offsetMinutes });
});

test.each([
  // Skipped: the last and first minute around it, and both ends of the gap itself.
  ['Europe/Berlin', '2026-03-29', '01:59', '2026-03-29T00:59'],
  ['Europe/Berlin', '2026-03-29', '02:00', 'skips 60 to 2026-03-29 03:00 at 2026-03-29T01:00'],
  ['Europe/Berlin', '2026-03-29', '02:59', 'skips 60 to 2026-03-29 03:00 at 2026-03-29T01:00'],
  ['Europe/Berlin', '2026-03-29', '03:00', '2026-03-29T01:00'],
  ['Australia/Lord_Howe', '2026-10-04', '02:15', 'skips 30 to 2026-10-04 02:30 at 2026-10-03T15:30'],
  ['America/Santiago', '2026-09-06', '00:30', 'skips 60 to 2026-09-06 01:00 at 2026-09-06T04:00'],
  ['Africa/Cairo', '2026-04-24', '00:00', 'skips 60 to 2026-04-24 01:00 at 2026-04-23T22:00'],
  ['Pacific/Apia', '2011-12-30', '18:00', 'skips 1440 to 2011-12-31 00:00 at 2011-12-30T10:00'],
  // Twice.
  ['Europe/Berlin', '2026-10-25', '01:59', '2026-10-24T23:59'],
  ['Europe/Berlin', '2026-10-25', '02:00', '2026-10-25T00:00 or 2026-10-25T01:00'],
  ['Europe/Berlin', '2026-10-25', '02:59', '2026-10-25T00:59 or 2026-10-25T01:59'],
  ['Europe/Berlin', '2026-10-25', '03:00', '2026-10-25T02:00'],
  ['Australia/Lord_Howe', '2026-04-05', '01:45', '2026-04-04T14:45 or 2026-04-04T15:15'],
  ['America/New_York', '2026-11-01', '01:30', '2026-11-01T05:30 or 2026-11-01T06:30'],
  // Neither.
  ['Pacific/Kiritimati', '2026-07-04', '18:30', '2026-07-04T04:30'],
  ['Asia/Kathmandu', '2026-07-04', '18:30', '2026-07-04T12:45'],
  ['America/St_Johns', '2026-07-04', '18:30', '2026-07-04T21:00'],
])('%s %s %s is %s', (zone, date, time, expected) => {
  expect(inWords(at(zone, date, time))).toBe(expected);
});

test('RFC 5545 reads a time that comes twice as the earlier one, and both name their offset', () => {
  expect(at('Europe/London', '2026-10-25', '01:30')).toEqual({
    kind: 'overlap',
    earlier: { instant: new Date('2026-10-25T00:30:00Z'), offsetMinutes: 60 },
    later: { instant: new Date('2026-10-25T01:30:00Z'), offsetMinutes: 0 },
  });
});

test('all faults of a local time are named, not only the first', () => {
  expect(inWords(at('europe/berlin', '2026-02-30', '24:00'))).toBe('bad date, bad time, bad zone');
  for (const date of ['2026-2-3', '2025-02-29', '1969-12-31', '2200-01-01', '', '2026-13-01']) {
    expect(inWords(at('Europe/Berlin', date, '12:00'))).toBe('bad date');
  }
  for (const time of ['7:30', '18:60', '18:30:00', '']) {
    expect(inWords(at('Europe/Berlin', '2026-03-01', time))).toBe('bad time');
  }
});

test('only zones of the form Area/City are taken, in their present spelling', () => {
  for (const zone of ['Europe/Oslo', 'America/Argentina/Ushuaia', 'Asia/Kolkata', 'Europe/Kyiv']) {
    expect(isKnownZone(zone)).toBe(true);
  }
  for (const zone of ['EST', 'UTC', 'GB', 'US/Pacific', 'europe/oslo', 'Asia/Calcutta', 'Etc/GMT+3', 'CET']) {
    expect(isKnownZone(zone)).toBe(false);
  }
});

test('there and back again: every half hour of two years, in zones with awkward clocks', () => {
  const zones = [
    'Europe/Berlin',
    'Australia/Lord_Howe',
    'America/Santiago',
    'Africa/Cairo',
    'America/Vancouver',
  ];
  const seen = { instant: 0, overlap: 0 };
  for (const zone of zones) {
    const end = Date.parse('2028-01-01T00:00Z');
    for (let ms = Date.parse('2026-01-01T00:00Z'); ms < end; ms += 30 * 60_000) {
      const { date, time } = localParts(new Date(ms), zone);
      const result = at(zone, date, time);
      if (result.kind === 'instant') {
        seen.instant += 1;
        if (result.instant.getTime() !== ms) throw new Error(`${zone} ${date} ${time}`);
      } else if (result.kind === 'overlap') {
        seen.overlap += 1;
        if (![result.earlier, result.later].some(({ instant }) => instant.getTime() === ms)) {
          throw new Error(`${zone} ${date} ${time}`);
        }
      } else {
        throw new Error(`${zone} ${date} ${time} is ${result.kind}`);
      }
    }
  }
  expect(seen.instant).toBeGreaterThan(170_000);
  expect(seen.overlap).toBeGreaterThan(20);
});

const asked = [
  ['Europe/Berlin', '2026-10-25', '02:30'],
  ['America/Vancouver', '2026-12-05', '11:00'],
  ['America/Los_Angeles', '2026-03-08', '02:30'],
] as const;
const answered = () => asked.map(([zone, date, time]) => JSON.stringify(at(zone, date, time)));

test.each(['2026-01-15', '2026-07-15', '2031-03-30'])(
  'the answer is the same whether asked on %s',
  (today) => {
    const expected = answered();
    jest.useFakeTimers({ now: new Date(`${today}T02:30:00Z`) });
    try {
      expect(answered()).toEqual(expected);
    } finally {
      jest.useRealTimers();
    }
  },
);

// The zone of a process is settled when it starts, so each needs one of its own.
test.each(['UTC', 'America/St_Johns', 'Pacific/Kiritimati'])(
  'the answer is the same on a machine in %s',
  async (TZ) => {
    const script = `
      const { resolveLocalTime } = require(${JSON.stringify(resolve('src/platform/local-time.ts'))});
      const answers = ${JSON.stringify(asked)}.map(([zone, date, time]) => JSON.stringify(resolveLocalTime({ date, time, zone })));
      console.log(JSON.stringify({ offset: new Date('2026-07-01').getTimezoneOffset(), answers }));
    `;
    const stdout = await outputOf(spawnTypescript(script, { TZ }));
    const { offset, answers } = JSON.parse(stdout) as { offset: number; answers: string[] };
    expect(offset).toBe({ UTC: 0, 'America/St_Johns': 150, 'Pacific/Kiritimati': -840 }[TZ]);
    expect(answers).toEqual(answered());
  },
);
