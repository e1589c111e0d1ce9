import { addDays, isCalendarDay, weekdayOf } from '../platform/calendar-day';

/**
 * The demo's lists state days relative to today, so that it is always the middle of the season:
 *
 * - `W+1 SAT` is the Saturday of the first weekend that begins after today, `W+2 SAT` the one after. `W-1 SUN` is the Sunday of
 *   the last weekend that ended before today, `W-2 SUN` the one before. MON to FRI are the days before that Saturday. There is no
 *   W0: on a weekend, today's is neither past nor to come.
 * - `D+9` is nine days after today, `D-9` nine days before.
 * - `Y-16 D+40` is sixteen years ago and forty days later.
 */
const token =
  /(?<=^|[,|"\n])(?:W([+-]\d+) (MON|TUE|WED|THU|FRI|SAT|SUN)|(?:Y-(\d+) )?D([+-]\d+))(?=$|[,|"\r\n])/g;

const daysFromSaturday = { MON: -5, TUE: -4, WED: -3, THU: -2, FRI: -1, SAT: 0, SUN: 1 };

/**
 * The same CSV text with days in place of what is relative to today.
 *
 * @param today ISO 8601 date
 * @throws when a list asks for week 0, or `today` is no date
 */
export function withDates(text: string, today: string): string {
  if (!isCalendarDay(today)) throw new Error(`"${today}" is not a day such as 2026-03-01.`);
  return text.replace(
    token,
    (_: string, week?: string, weekday?: keyof typeof daysFromSaturday, years?: string, days?: string) =>
      week !== undefined && weekday !== undefined
        ? addDays(weekendSaturday(Number(week), today), daysFromSaturday[weekday])
        : addDays(yearsBefore(today, Number(years ?? 0)), Number(days)),
  );
}

/** The Saturday of a weekend, counted from today as above. */
export function weekendSaturday(week: number, today: string): string {
  if (week === 0) throw new Error('There is no week 0; weekends count from W-1 back and from W+1 on.');
  const weekday = weekdayOf(today);
  if (week > 0) {
    const toNext = weekday < 6 ? 6 - weekday : 13 - weekday;
    return addDays(today, toNext + (week - 1) * 7);
  }
  // Monday to Sunday: two days back to last Saturday on a Monday, eight on a Sunday.
  return addDays(today, -(weekday + 1) + (week + 1) * 7);
}

function yearsBefore(day: string, years: number): string {
  const date = `${Number(day.slice(0, 4)) - years}${day.slice(4)}`;
  return isCalendarDay(date) ? date : `${date.slice(0, 8)}28`;
}
