const QUARTER_HOUR_MS = 15 * 60_000;

/**
 * The local calendar date of instants in an IANA zone, as `2026-03-28`. Asking the platform is slow, so
 * answers are kept by quarter of an hour where the whole quarter has one date.
 */
export function localDate(timeZone: string): (instantMs: number) => string {
  const format = new Intl.DateTimeFormat('en-CA', {
    timeZone,
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
  });
  const dateByQuarter = new Map<number, string | null>();
  return (instantMs) => {
    const quarter = Math.floor(instantMs / QUARTER_HOUR_MS);
    let date = dateByQuarter.get(quarter);
    if (date === undefined) {
      const first = format.format(quarter * QUARTER_HOUR_MS);
      const last = format.format((quarter + 1) * QUARTER_HOUR_MS - 1);
      date = first === last ? first : null;
      dateByQuarter.set(quarter, date);
    }
    return date ?? format.format(instantMs);
  };
}
