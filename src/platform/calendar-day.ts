/** Arithmetic on calendar days, `YYYY-MM-DD`, which have neither a zone nor a length in hours. */

const dayMs = 86_400_000;

/** The day so many days later; earlier when negative. */
export function addDays(day: string, days: number): string {
  return new Date(midnight(day) + days * dayMs).toISOString().slice(0, 10);
}

/** Days from the first to the second; negative when the second is earlier. */
export function daysBetween(first: string, second: string): number {
  return (midnight(second) - midnight(first)) / dayMs;
}

/** 1 Monday to 7 Sunday (ISO 8601). */
export function weekdayOf(day: string): number {
  return new Date(midnight(day)).getUTCDay() || 7;
}

/** Whole years of life on a day; who is born on 29 February has the birthday on 1 March in other years. */
export function ageOn(birthDay: string, day: string): number {
  const years = Number(day.slice(0, 4)) - Number(birthDay.slice(0, 4));
  return day.slice(5) < birthDay.slice(5) ? years - 1 : years;
}

/** Whether the text is a day that exists. */
export function isCalendarDay(text: string): boolean {
  if (!/^\d{4}-\d\d-\d\d$/.test(text)) return false;
  // The parser carries 30 February over into March, so the day must come back as it went in.
  const ms = Date.parse(`${text}T00:00:00Z`);
  return !Number.isNaN(ms) && new Date(ms).toISOString().startsWith(text);
}

function midnight(day: string): number {
  if (!isCalendarDay(day)) throw new Error(`"${day}" is not a day such as 2026-03-01.`);
  return Date.parse(`${day}T00:00:00Z`);
}
