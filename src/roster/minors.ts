import { ageOn } from '../platform/calendar-day';

/**
 * Whether somebody is still a minor on a day. Who was born on 29 February comes of age on 1 March of other years, the
 * cautious reading; local law decides.
 *
 * @param birthDate ISO 8601; null (unknown) counts as an adult
 * @param date ISO 8601 local date
 * @param adultAge age in years from which a person is an adult
 */
export function isMinorOn(birthDate: string | null, date: string, adultAge: number): boolean {
  return birthDate !== null && ageOn(birthDate, date) < adultAge;
}
