const frequencies: Readonly<Record<string, readonly [one: string, many: string]>> = {
  DAILY: ['every day', 'days'],
  WEEKLY: ['every week', 'weeks'],
  MONTHLY: ['every month', 'months'],
  YEARLY: ['every year', 'years'],
};
const days: Readonly<Record<string, string>> = {
  MO: 'Mondays',
  TU: 'Tuesdays',
  WE: 'Wednesdays',
  TH: 'Thursdays',
  FR: 'Fridays',
  SA: 'Saturdays',
  SU: 'Sundays',
};

/**
 * An RFC 5545 recurrence rule as people say it: "every week on Mondays and Fridays until 2027-05-31". A rule with parts that have
 * no words here is shown as it is, rather than half told.
 */
export function recurrenceWords(rule: string): string {
  const parts = new Map(rule.split(';').map((part) => part.split('=', 2) as [string, string]));
  const { FREQ = '', INTERVAL = '1', BYDAY, UNTIL, COUNT, ...others } = Object.fromEntries(parts);
  const frequency = frequencies[FREQ];
  const named = (BYDAY ?? '').split(',').map((day) => (day === '' ? '' : (days[day] ?? null)));
  if (
    frequency === undefined ||
    named.includes(null) ||
    Object.keys(others).some((name) => name !== 'WKST')
  ) {
    return rule;
  }
  const [one, many] = frequency;
  return [
    INTERVAL === '1' ? one : `every ${INTERVAL} ${many}`,
    BYDAY === undefined ? '' : `on ${listed(named.filter((day) => day !== null))}`,
    UNTIL === undefined ? '' : `until ${UNTIL.replace(/^(\d{4})(\d\d)(\d\d).*$/, '$1-$2-$3')}`,
    COUNT === undefined ? '' : `${COUNT} times`,
  ]
    .filter((text) => text !== '')
    .join(' ');
}

function listed(names: readonly string[]): string {
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}
