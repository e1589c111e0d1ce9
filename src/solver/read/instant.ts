const INSTANT = /^(\d{4})-(\d\d)-(\d\d)T\d\d:\d\d(?::\d\d(?:\.\d+)?)?(?:Z|[+-]\d\d:\d\d)$/;

/**
 * Why `value` is not an instant of the format: ISO 8601 date and time with an offset or `Z`, on a date
 * that exists. Null when it is one.
 */
export function instantFault(value: unknown): { readonly problem: string; readonly remedy: string } | null {
  const remedy = 'Write it like 2026-03-28T18:30:00+01:00.';
  const match = typeof value === 'string' ? INSTANT.exec(value) : null;
  if (match === null || typeof value !== 'string') {
    return { problem: 'must be an ISO 8601 instant with an offset or Z', remedy };
  }
  const [, year, month, day] = match;
  const daysInMonth = lastDayOfMonth(Number(year), Number(month));
  if (Number(day) < 1 || Number(day) > daysInMonth) {
    return { problem: 'is a date that does not exist', remedy: 'Correct the day or the month.' };
  }
  if (!Number.isFinite(Date.parse(value))) {
    return { problem: 'is a time of day or an offset that does not exist', remedy };
  }
  return null;
}

/** 28 to 31; 0 for a month that does not exist. */
function lastDayOfMonth(year: number, month: number): number {
  if (month < 1 || month > 12) return 0;
  if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}
