import { DateTime } from 'luxon';
import { isCalendarDay } from '../../platform/calendar-day';
import type { Cell } from './import-kind';

/** An ISO 8601 date, or one in the association's stated format; nothing is guessed. */
export function date(): Cell<string> {
  return {
    form: "a date as 2026-11-07, or in the association's own format",
    read: (text, { association: { dateFormat } }) => {
      const readings = new Set<string>();
      if (isCalendarDay(text)) readings.add(text);
      const stated = DateTime.fromFormat(text, dateFormat, { zone: 'utc', locale: 'en-GB' });
      if (stated.isValid) readings.add(stated.toISODate());
      const [value, other] = readings;
      const remedy = `write it as 2026-11-07${dateFormat === 'yyyy-MM-dd' ? '' : ` or ${exampleOf(dateFormat)} (${dateFormat})`}`;
      if (value === undefined) return { message: 'It is no date that exists.', remedy };
      if (other !== undefined)
        return {
          message: `It may mean ${value} or ${other}.`,
          remedy: 'choose a date format for the association that cannot be taken for ISO 8601',
        };
      return year(value) < 1900 || year(value) > 2199
        ? { message: 'It lies before 1900 or after 2199.', remedy: 'write the year with four digits' }
        : { value };
    },
  };
}

/** A time of day, kept as `HH:mm`. */
export function timeOfDay(latest: '23:59' | '24:00' = '23:59'): Cell<string> {
  const pattern = latest === '24:00' ? /^(([01]\d|2[0-3]):[0-5]\d|24:00)$/ : /^([01]\d|2[0-3]):[0-5]\d$/;
  return {
    form: `a time of day as 18:30, from 00:00 to ${latest}`,
    read: (text) =>
      pattern.test(text)
        ? { value: text }
        : {
            message: 'It is no time of day.',
            remedy: `write hours and minutes as 18:30, from 00:00 to ${latest}`,
          },
  };
}

/** Minutes east of Greenwich, as `+02:00`. */
export function utcOffset(): Cell<number | null> {
  return {
    form: 'the offset from UTC, as +02:00; only for a time that the clocks show twice',
    read: (text) => {
      if (text === 'Z') return { value: 0 };
      const [, sign, hours, minutes] = /^([+-])(0\d|1[0-4]):([0-5]\d)$/.exec(text) ?? [];
      return sign === undefined
        ? { message: 'It is no offset from UTC.', remedy: 'write it as +02:00, or leave it empty' }
        : { value: (sign === '-' ? -1 : 1) * (Number(hours) * 60 + Number(minutes)) + 0 };
    },
  };
}

/** `+02:00` of 120. */
export function offsetText(minutes: number): string {
  const size = Math.abs(minutes);
  const two = (number: number) => String(number).padStart(2, '0');
  return `${minutes < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`;
}

function exampleOf(format: string): string {
  return DateTime.utc(2026, 11, 7).setLocale('en-GB').toFormat(format);
}

function year(isoDate: string): number {
  return Number(isoDate.slice(0, 4));
}
