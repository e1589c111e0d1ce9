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

/** Completed years of life on a day; both dates ISO 8601. Negative before birth. */
export function ageOn(birthDate: string, date: string): number {
  const years = Number(date.slice(0, 4)) - Number(birthDate.slice(0, 4));
  return date.slice(5) < birthDate.slice(5) ? years - 1 : years;
}
