/** Month and day from which games count to the new season. */
const seasonStartMonthDay = '07-01';

/**
 * The first local date of the season to which a day belongs: the last 1 July on or before it. Indoor seasons
 * of the northern hemisphere lie between two of them (common practice, no source).
 *
 * @param date `YYYY-MM-DD`
 */
export function seasonStart(date: string): string {
  const year = Number(date.slice(0, 4));
  const hasBegun = date.slice(5) >= seasonStartMonthDay;
  return `${String(hasBegun ? year : year - 1).padStart(4, '0')}-${seasonStartMonthDay}`;
}
