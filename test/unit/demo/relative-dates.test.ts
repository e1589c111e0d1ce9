// Goal: past weekends are over and coming ones have not begun, whatever day it is. Method: every day of two years.
import { addDays, daysBetween, weekdayOf } from '../../../src/platform/calendar-day';
import { weekendSaturday, withDates } from '../../../src/demo/relative-dates';

test('weekends before and after every day of two years', () => {
  for (let today = '2027-07-01'; today < '2029-07-01'; today = addDays(today, 1)) {
    const [last, next] = [weekendSaturday(-1, today), weekendSaturday(1, today)];
    expect([weekdayOf(last), weekdayOf(next)]).toEqual([6, 6]);
    expect(addDays(last, 1) < today && today < next).toBe(true);
    expect(daysBetween(last, today)).toBeLessThanOrEqual(8);
    expect(daysBetween(today, next)).toBeLessThanOrEqual(7);
    expect(daysBetween(weekendSaturday(-10, today), last)).toBe(63);
    expect(daysBetween(next, weekendSaturday(2, today))).toBe(7);
  }
});

test.each([
  ['W+1 SAT', '2026-11-28'],
  ['W+2 SUN', '2026-12-06'],
  ['W-1 FRI', '2026-11-20'],
  ['W-2 SUN', '2026-11-15'],
  ['D+9', '2026-12-04'],
  ['D-30', '2026-10-26'],
  ['Y-16 D+40', '2011-01-04'],
])('on 25 November 2026, a Wednesday, %s is %s', (relative, day) => {
  expect(withDates(relative, '2026-11-25')).toBe(day);
  expect(withDates(`a,${relative}|${relative},"${relative}"\r\n${relative},b\n`, '2026-11-25')).toBe(
    `a,${day}|${day},"${day}"\r\n${day},b\n`,
  );
});

test('a leap day of another year, text that only looks alike, and week 0', () => {
  expect(withDates('Y-1 D+0', '2028-02-29')).toBe('2027-02-28');
  for (const text of ['see W+1 SAT', 'W+1 SATURDAY', 'D+', 'DD+9'])
    expect(withDates(text, '2026-11-25')).toBe(text);
  expect(() => withDates('W+0 SAT', '2026-11-25')).toThrow('no week 0');
});
