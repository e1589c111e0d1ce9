import { localParts } from '../../platform/local-time';

const formats = new Map<string, Intl.DateTimeFormat>();

/** Making a formatter costs far more than using it. Only days are named by it, never times: those come from our own zone tables. */
function format(language: string, options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  const key = JSON.stringify([language, options]);
  let found = formats.get(key);
  if (found === undefined) {
    found = new Intl.DateTimeFormat(language, { timeZone: 'UTC', ...options });
    formats.set(key, found);
  }
  return found;
}

const noon = (date: string) => new Date(`${date}T12:00:00Z`);

/** "18:30" by the clock on the wall in the zone. */
export function timeOf(at: Date, zone: string): string {
  return localParts(at, zone).time;
}

/** "Saturday 14 November" in the zone. */
export function dayOf(at: Date, zone: string, language: string): string {
  return calendarDay(localParts(at, zone).date, language);
}

/** "2026-11-14" in the zone. */
export function localDateOf(at: Date, zone: string): string {
  return localParts(at, zone).date;
}

/** "Saturday 14 November" for a calendar day `YYYY-MM-DD`, which has no zone. */
export function calendarDay(date: string, language: string): string {
  return format(language, { weekday: 'long', day: 'numeric', month: 'long' }).format(noon(date));
}

/** "14–15 November 2026" for two calendar days. */
export function calendarSpan(from: string, to: string, language: string): string {
  const days = format(language, { day: 'numeric', month: 'long', year: 'numeric' });
  return from === to ? days.format(noon(from)) : days.formatRange(noon(from), noon(to));
}

/** Minutes between midnight and an instant by the clock on the wall in the zone. */
export function wallMinutes(at: Date, zone: string): number {
  const [hours = 0, minutes = 0] = timeOf(at, zone).split(':').map(Number);
  return hours * 60 + minutes;
}
