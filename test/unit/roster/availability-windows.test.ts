// Goal: local rules become the right instants across both clock changes, and overlapping rules give way by priority. Method:
// UTC instants worked out by hand for Copenhagen, where clocks go forward on 29 March 2026 (02:00 to 03:00) and back on
// 25 October 2026 (03:00 to 02:00).
import { availabilityWindows, type AvailabilityStretch } from '../../../src/roster/availability-windows';

const zone = 'Europe/Copenhagen';
const rule = (changes: Partial<AvailabilityStretch>): AvailabilityStretch => ({
  kind: 'available',
  localDate: '2026-03-07',
  localTime: '09:00:00',
  durationMinutes: 540,
  timeZone: zone,
  recurrence: null,
  exceptDates: [],
  priority: 0,
  ...changes,
});
const windows = (rules: AvailabilityStretch[], fromDate: string, toDate: string) => {
  const shown = (list: readonly { from: number; to: number }[]) =>
    list.map(({ from, to }) => [from, to].map((at) => new Date(at).toISOString().slice(0, 16)).join(' '));
  const { available, reluctant } = availabilityWindows(rules, { fromDate, toDate }, zone);
  return { available: shown(available), reluctant: shown(reluctant) };
};

test('without any rule nobody is free', () => {
  expect(windows([], '2026-03-01', '2026-04-01')).toEqual({ available: [], reluctant: [] });
});

test('every Saturday, 09:00 to 18:00 by the clock on the wall, before and after each change', () => {
  const weekly = rule({ recurrence: 'FREQ=WEEKLY' });
  expect(windows([weekly], '2026-03-28', '2026-04-04').available).toEqual([
    '2026-03-28T08:00 2026-03-28T17:00',
    '2026-04-04T07:00 2026-04-04T16:00',
  ]);
  expect(windows([weekly], '2026-10-24', '2026-10-31').available).toEqual([
    '2026-10-24T07:00 2026-10-24T16:00',
    '2026-10-31T08:00 2026-10-31T17:00',
  ]);
});

test('a night across a change has five or seven hours', () => {
  const night = { localTime: '22:00:00', durationMinutes: 360 };
  expect(
    windows([rule({ ...night, localDate: '2026-03-28' })], '2026-03-28', '2026-03-29').available,
  ).toEqual(['2026-03-28T21:00 2026-03-29T02:00']);
  expect(
    windows([rule({ ...night, localDate: '2026-10-24' })], '2026-10-24', '2026-10-25').available,
  ).toEqual(['2026-10-24T20:00 2026-10-25T03:00']);
});

test('an end in a repeated hour shortens free time and lengthens busy time', () => {
  const toHalfPastTwo = { localDate: '2026-10-25', localTime: '00:00:00', durationMinutes: 150 };
  expect(windows([rule(toHalfPastTwo)], '2026-10-25', '2026-10-25').available).toEqual([
    '2026-10-24T22:00 2026-10-25T00:30',
  ]);
  const allDay = rule({ localDate: '2026-10-25', localTime: '00:00:00', durationMinutes: 1440 });
  expect(
    windows([allDay, rule({ ...toHalfPastTwo, kind: 'busy' })], '2026-10-25', '2026-10-25').available,
  ).toEqual(['2026-10-25T01:30 2026-10-25T23:00']);
});

test('an end in a skipped hour is the moment of the skip', () => {
  const fromHalfPastTwo = rule({ localDate: '2026-03-29', localTime: '02:30:00', durationMinutes: 90 });
  expect(windows([fromHalfPastTwo], '2026-03-29', '2026-03-29').available).toEqual([
    '2026-03-29T01:00 2026-03-29T02:00',
  ]);
});

test('days that touch at midnight are one window, and it reaches a day beyond the range', () => {
  const always = rule({
    localDate: '2026-01-01',
    localTime: '00:00:00',
    durationMinutes: 1440,
    recurrence: 'FREQ=DAILY',
  });
  expect(windows([always], '2026-05-09', '2026-05-10').available).toEqual([
    '2026-05-07T22:00 2026-05-11T22:00',
  ]);
});

test('a stretch that began before the range still reaches into it', () => {
  const week = rule({ localDate: '2026-05-04', localTime: '00:00:00', durationMinutes: 7 * 1440 });
  expect(windows([week], '2026-05-10', '2026-05-10').available).toEqual([
    '2026-05-08T22:00 2026-05-10T22:00',
  ]);
});

describe('the end of a repetition', () => {
  const last = (recurrence: string) =>
    windows([rule({ recurrence })], '2026-03-01', '2026-06-30')
      .available.at(-1)
      ?.slice(0, 10);

  test.each([
    ['FREQ=WEEKLY;COUNT=3', '2026-03-21'],
    ['FREQ=WEEKLY;UNTIL=20260411', '2026-04-11'],
    ['FREQ=WEEKLY;UNTIL=20260410', '2026-04-04'],
    ['FREQ=WEEKLY;UNTIL=20260411T070000Z', '2026-04-11'],
    ['FREQ=WEEKLY;UNTIL=20260411T065959Z', '2026-04-04'],
    ['FREQ=WEEKLY;UNTIL=20260411T090000', '2026-04-11'],
    ['FREQ=WEEKLY;UNTIL=20260411T085959', '2026-04-04'],
    ['FREQ=WEEKLY;INTERVAL=2;UNTIL=20260401', '2026-03-21'],
    ['FREQ=MONTHLY;BYDAY=1SA', '2026-06-06'],
  ])('%s: the last is on %s', (recurrence, expected) => {
    expect(last(recurrence)).toBe(expected);
  });

  test('excepted days are left out', () => {
    const weekly = rule({ recurrence: 'FREQ=WEEKLY;COUNT=3', exceptDates: ['2026-03-14'] });
    expect(windows([weekly], '2026-03-01', '2026-03-31').available).toEqual([
      '2026-03-07T08:00 2026-03-07T17:00',
      '2026-03-21T08:00 2026-03-21T17:00',
    ]);
  });
});

describe('where rules overlap', () => {
  const day = '2026-05-09';
  const at = (kind: AvailabilityStretch['kind'], hour: number, hours: number, priority = 0) =>
    rule({
      kind,
      localDate: day,
      localTime: `${String(hour).padStart(2, '0')}:00:00`,
      durationMinutes: hours * 60,
      priority,
    });
  const result = (...rules: AvailabilityStretch[]) => windows(rules, day, day);
  const utc = (from: number, to: number) =>
    [from, to].map((hour) => `${day}T${String(hour - 2).padStart(2, '0')}:00`).join(' ');

  test('busy is cut out of available', () => {
    expect(result(at('available', 9, 9), at('busy', 12, 1)).available).toEqual([utc(9, 12), utc(13, 18)]);
  });

  test('reluctant time is free time with a mark, also outside the available', () => {
    expect(result(at('available', 9, 3), at('reluctant', 11, 3))).toEqual({
      available: [utc(9, 14)],
      reluctant: [utc(11, 14)],
    });
    expect(result(at('reluctant', 9, 3), at('busy', 10, 1))).toEqual({
      available: [utc(9, 10), utc(11, 12)],
      reluctant: [utc(9, 10), utc(11, 12)],
    });
  });

  test('1 is stronger than 9, and 9 stronger than none', () => {
    expect(result(at('busy', 9, 9, 9), at('available', 10, 2, 1)).available).toEqual([utc(10, 12)]);
    expect(result(at('busy', 9, 9, 0), at('available', 10, 2, 9)).available).toEqual([utc(10, 12)]);
    expect(result(at('busy', 9, 9, 1), at('available', 10, 2, 9)).available).toEqual([]);
    expect(result(at('busy', 9, 9, 4), at('available', 10, 2, 4)).available).toEqual([]);
  });
});

test('a range that is too long or upside down is refused', () => {
  expect(() => windows([], '2026-01-02', '2026-01-01')).toThrow('no range');
  expect(() => windows([], '2026-01-01', '2028-01-01')).toThrow('no range');
});
