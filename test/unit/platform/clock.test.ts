// Goal: a fixed clock moves only when told, and a moment without its offset is refused.
import { FixedClock } from '../../../src/platform/clock';
import { addDays, ageOn, daysBetween, isCalendarDay, weekdayOf } from '../../../src/platform/calendar-day';

test('a fixed clock stands still until it is moved', () => {
  const clock = new FixedClock('2026-03-01T18:00:00+01:00');
  clock.now().setFullYear(1999);
  expect(clock.now().toISOString()).toBe('2026-03-01T17:00:00.000Z');
  clock.advanceMinutes(90);
  expect(clock.now().toISOString()).toBe('2026-03-01T18:30:00.000Z');
  clock.moveTo('2026-10-25T00:30:00Z');
  expect(clock.now().toISOString()).toBe('2026-10-25T00:30:00.000Z');
});

test('a moment without an offset is refused: it would mean another one on every machine', () => {
  for (const text of ['2026-03-01T18:00:00', '2026-03-01', 'yesterday Z', '']) {
    expect(() => new FixedClock(text)).toThrow(/is not an instant/);
  }
});

test('age is counted in birthdays', () => {
  expect(ageOn('2008-03-01', '2026-02-28')).toBe(17);
  expect(ageOn('2008-03-01', '2026-03-01')).toBe(18);
  expect(ageOn('2008-02-29', '2026-02-28')).toBe(17);
  expect(ageOn('2008-02-29', '2026-03-01')).toBe(18);
  expect(ageOn('2008-02-29', '2028-02-29')).toBe(20);
});

test('days are counted over leap days, years and clock changes', () => {
  expect(addDays('2028-02-28', 1)).toBe('2028-02-29');
  expect(addDays('2026-12-31', 1)).toBe('2027-01-01');
  expect(addDays('2026-03-30', -2)).toBe('2026-03-28');
  expect(daysBetween('2026-03-28', '2026-03-30')).toBe(2);
  expect(daysBetween('2027-01-01', '2026-01-01')).toBe(-365);
  // ISO 8601 gives 1 January 2000 as a Saturday.
  expect(weekdayOf('2000-01-01')).toBe(6);
  expect(weekdayOf('2000-01-02')).toBe(7);
  expect(['2027-02-29', '2026-1-1', '2026-00-10', ''].some(isCalendarDay)).toBe(false);
  expect(() => addDays('2027-02-29', 1)).toThrow(/is not a day/);
});
