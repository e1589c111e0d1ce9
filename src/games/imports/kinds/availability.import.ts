import { resolveLocalTime } from '../../../platform/local-time';
import { recurrenceFault } from '../../../roster/recurrence';
import { date, timeOfDay } from '../date-cells';
import { line, listOf, nameOf, oneOf, orNull, wholeNumber } from '../import-cells';
import { defineImportKind, optional, required, type CellContext, type RecordOf } from '../import-kind';

const columns = {
  official: required(nameOf('officials', 'official'), 'number of the official'),
  kind: required(
    oneOf<'available' | 'busy' | 'reluctant'>(
      { available: 'available', busy: 'busy', reluctant: 'reluctant' },
      'available, busy or reluctant',
    ),
    'what they are in this time; reluctant is free, but would rather not',
  ),
  date: required(date(), 'first (or only) local date'),
  from: required(timeOfDay(), 'when it begins'),
  to: required(timeOfDay('24:00'), 'when it ends; at or before `from`, on the next day'),
  repeat: optional(line(200), '', 'empty for once, daily, weekly, monthly, yearly, or an RFC 5545 rule'),
  until: optional(orNull(date()), null, 'last date of a repetition'),
  except: optional(listOf(date()), [], 'dates of a repetition that fall out, with "|" between them'),
  priority: optional(wholeNumber(0, 9), 0, 'RFC 7953: 1 strongest, 9 weak, 0 weakest'),
  note: optional(line(200), '', 'why'),
};

type AvailabilityLine = RecordOf<typeof columns>;

const plainWords = new Map(
  ['daily', 'weekly', 'monthly', 'yearly'].map((word) => [word, `FREQ=${word.toUpperCase()}`]),
);

/** When officials are free. A rule is recognised by everything but its exceptions, priority and note. */
export const availabilityImport = defineImportKind({
  name: 'availability',
  noun: 'availability rule',
  after: ['officials'],
  columns,
  keyOf: (rule, context) => availabilityKey({ ...rule, repeat: recurrenceOf(rule, context) }),
  complete: (merged, context) => {
    const recurrence = recurrenceOf(merged, context);
    if (recurrence === '') {
      if (
        resolveLocalTime({ date: merged.date, time: merged.from, zone: context.association.timeZone })
          .kind === 'gap'
      )
        context.fault(
          'from',
          `The clocks skip ${merged.from} on ${merged.date}.`,
          'choose a time that exists',
        );
      for (const column of ['until', 'except'] as const)
        if (merged[column] !== null && merged[column].length > 0)
          context.fault(
            column,
            'It has a meaning for a repetition only.',
            'fill the column repeat, or empty this',
          );
    } else {
      const fault = recurrenceFault(recurrence, merged.date);
      if (fault !== null)
        context.fault(
          'repeat',
          `It is no rule that is followed here: ${fault}.`,
          'write weekly, or FREQ=WEEKLY;BYDAY=SA',
        );
      if (merged.until !== null && merged.until < merged.date)
        context.fault('until', `It is before ${merged.date}, the first date.`, 'correct one of the two');
      if (merged.until !== null && /UNTIL=|COUNT=/.test(merged.repeat.toUpperCase()))
        context.fault('until', 'The rule in repeat states its end too.', 'keep one of the two');
    }
    return {
      ...merged,
      to: endOf(merged.to),
      repeat: recurrence,
      until: null,
      except: [...merged.except].sort(),
    };
  },
  withdraw: (rule, { records }) =>
    records.some(({ official }) => official === rule.official) ? null : undefined,
});

/** What the unique index of the table compares; `repeat` is an RRULE value or empty. */
export function availabilityKey(
  rule: Pick<AvailabilityLine, 'official' | 'kind' | 'date' | 'from' | 'to' | 'repeat'>,
): string {
  const { official, kind, from, to, repeat } = rule;
  return [official, kind, rule.date, `${from}-${endOf(to)}`, repeat].filter((part) => part !== '').join(' ');
}

/** Midnight at the end of a stretch has two names; we keep one. */
function endOf(to: string): string {
  return to === '00:00' ? '24:00' : to;
}

/** Wall-clock minutes from `from` to `to`, past midnight where `to` is not later. */
export function stretchMinutes(from: string, to: string): number {
  const minutesOf = (time: string) => Number(time.slice(0, 2)) * 60 + Number(time.slice(3, 5));
  const minutes = minutesOf(to) - minutesOf(from);
  return minutes > 0 ? minutes : minutes + 1440;
}

/** An RRULE value; empty where nothing repeats. RFC 5545 wants the end of a rule in local time with a zone in UTC. */
function recurrenceOf(rule: AvailabilityLine, context: CellContext): string {
  const base = plainWords.get(rule.repeat.toLowerCase()) ?? rule.repeat.toUpperCase().replace(/^RRULE:/, '');
  if (base === '' || rule.until === null || /UNTIL=|COUNT=/.test(base)) return base;
  const last = resolveLocalTime({ date: rule.until, time: '23:59', zone: context.association.timeZone });
  const at = last.kind === 'instant' ? last.instant : last.kind === 'overlap' ? last.later.instant : null;
  const until = at === null ? rule.until : at.toISOString().slice(0, 19);
  return `${base};UNTIL=${until.replace(/[-:]/g, '')}${at === null ? '' : 'Z'}`;
}
