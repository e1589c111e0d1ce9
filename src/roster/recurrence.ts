import { RRuleTemporal } from 'rrule-temporal';

/** When a repeating stretch ends: not at all, with a local day, at a local date and time, or at an instant. */
type Until =
  | { readonly kind: 'never' }
  | { readonly kind: 'date'; readonly date: string }
  | { readonly kind: 'local'; readonly dateTime: string }
  | { readonly kind: 'instant'; readonly at: number };

const frequencies = ['DAILY', 'WEEKLY', 'MONTHLY', 'YEARLY'];
const parts = [
  ...['FREQ', 'INTERVAL', 'COUNT', 'UNTIL', 'WKST'],
  ...['BYDAY', 'BYMONTH', 'BYMONTHDAY', 'BYYEARDAY', 'BYWEEKNO', 'BYSETPOS'],
];
const countMax = 3660;

/**
 * Why a text is no rule that we follow; null when it is one. We follow RFC 5545, section 3.3.10, from DAILY to YEARLY: a
 * stretch has its own time of day, so that parts of a day (HOURLY, BYHOUR and the like) have no meaning here.
 *
 * @param text an RRULE value without the property name
 * @param firstDate ISO 8601; must be a day of the rule
 */
export function recurrenceFault(text: string, firstDate: string): string | null {
  const read = new Map<string, string>();
  for (const part of text.split(';')) {
    const [, name, value] = /^([A-Z]+)=([A-Z0-9,+-]+)$/.exec(part) ?? [];
    if (name === undefined || value === undefined) return `"${part}" is no part of a rule`;
    if (!parts.includes(name)) return `${name} is not followed here`;
    if (read.has(name)) return `${name} is stated twice`;
    read.set(name, value);
  }
  const frequency = read.get('FREQ');
  if (frequency === undefined) return 'FREQ is missing';
  if (!frequencies.includes(frequency)) return `FREQ must be one of ${frequencies.join(', ')}`;
  if (read.has('COUNT') && read.has('UNTIL')) return 'COUNT and UNTIL exclude each other';
  for (const name of ['COUNT', 'INTERVAL']) {
    const value = read.get(name);
    if (value !== undefined && !(/^\d{1,4}$/.test(value) && Number(value) >= 1 && Number(value) <= countMax))
      return `${name} must be a whole number from 1 to ${countMax}`;
  }
  const until = read.get('UNTIL');
  if (until !== undefined && parseUntil(until) === null)
    return 'UNTIL must be like 20270530 or 20270530T215959Z';
  try {
    if (!recurrenceDates(text, firstDate, { fromDate: firstDate, toDate: firstDate }).includes(firstDate))
      return `the first day, ${firstDate}, is not one of its days`;
  } catch (error) {
    return error instanceof Error ? error.message : 'the rule cannot be read';
  }
  return null;
}

/**
 * The local dates of a rule that lie in a range, its end (UNTIL) left out of account; see `isPastUntil`. Only dates are
 * reckoned with here, so no time zone has a say in it.
 *
 * @param range ISO 8601 local dates, both inclusive
 */
export function recurrenceDates(
  text: string,
  firstDate: string,
  range: { readonly fromDate: string; readonly toDate: string },
): string[] {
  if (range.toDate < firstDate) return [];
  const rule = new RRuleTemporal({
    rruleString: `DTSTART:${firstDate.replaceAll('-', '')}T000000Z\nRRULE:${withoutUntil(text)}`,
    strict: true,
  });
  const from = range.fromDate < firstDate ? firstDate : range.fromDate;
  return rule
    .between(new Date(`${from}T00:00:00Z`), new Date(`${range.toDate}T00:00:00Z`), true)
    .map((moment) => moment.toPlainDate().toString());
}

/** A test that says of an occurrence whether it begins after the rule's UNTIL, which is inclusive. */
export function isPastUntil(
  text: string,
): (occurrence: { localDate: string; localTime: string; startsAt: number }) => boolean {
  const value = /(?:^|;)UNTIL=([^;]*)/.exec(text)?.[1];
  const until: Until = value === undefined ? { kind: 'never' } : (parseUntil(value) ?? { kind: 'never' });
  return ({ localDate, localTime, startsAt }) => {
    switch (until.kind) {
      case 'never':
        return false;
      case 'date':
        return localDate > until.date;
      case 'local':
        return `${localDate}T${localTime}` > until.dateTime;
      case 'instant':
        return startsAt > until.at;
    }
  };
}

function parseUntil(value: string): Until | null {
  const [, year, month, day, time, zulu] = /^(\d{4})(\d{2})(\d{2})(?:T(\d{6})(Z?))?$/.exec(value) ?? [];
  if (year === undefined) return null;
  const date = `${year}-${month}-${day}`;
  if (Number.isNaN(Date.parse(`${date}T00:00:00Z`))) return null;
  if (time === undefined) return { kind: 'date', date };
  const clock = `${time.slice(0, 2)}:${time.slice(2, 4)}:${time.slice(4)}`;
  const at = Date.parse(`${date}T${clock}Z`);
  if (Number.isNaN(at)) return null;
  return zulu === 'Z' ? { kind: 'instant', at } : { kind: 'local', dateTime: `${date}T${clock}` };
}

function withoutUntil(text: string): string {
  return text
    .split(';')
    .filter((part) => !part.startsWith('UNTIL='))
    .join(';');
}
