// Goal: only rules that repeat by days are taken, each refusal says why, and the days are those of RFC 5545. Source of the
// expanded examples: RFC 5545, section 3.8.5.3.
import { recurrenceDates, recurrenceFault } from '../../../src/roster/recurrence';

test.each([
  ['FREQ=HOURLY', 'FREQ must be one of'],
  ['FREQ=SECONDLY', 'FREQ must be one of'],
  ['FREQ=WEEKLY;BYHOUR=9', 'BYHOUR is not followed here'],
  ['FREQ=WEEKLY;RSCALE=CHINESE', 'RSCALE is not followed here'],
  ['INTERVAL=2', 'FREQ is missing'],
  ['FREQ=WEEKLY;FREQ=DAILY', 'FREQ is stated twice'],
  ['FREQ=WEEKLY;COUNT=0', 'COUNT must be a whole number'],
  ['FREQ=WEEKLY;COUNT=99999', 'COUNT must be a whole number'],
  ['FREQ=WEEKLY;INTERVAL=0', 'INTERVAL must be a whole number'],
  ['FREQ=WEEKLY;COUNT=3;UNTIL=20270101', 'COUNT and UNTIL exclude each other'],
  ['FREQ=WEEKLY;UNTIL=20271301', 'UNTIL must be like'],
  ['FREQ=WEEKLY;BYDAY=XX', 'BYDAY'],
  ['FREQ=WEEKLY;BYDAY=SU', 'the first day, 2026-11-07, is not one of its days'],
  ['every week', 'is no part of a rule'],
  ['FREQ=WEEKLY\nRDATE:20260101', 'is no part of a rule'],
])('%s is refused: %s', (text, reason) => {
  expect(recurrenceFault(text, '2026-11-07')).toContain(reason);
});

test.each([
  'FREQ=WEEKLY',
  'FREQ=DAILY;INTERVAL=7',
  'FREQ=MONTHLY;BYDAY=1SA',
  'FREQ=WEEKLY;UNTIL=20270501T215959Z',
])('%s is taken', (text) => {
  expect(recurrenceFault(text, '2026-11-07')).toBeNull();
});

test.each([
  [
    'FREQ=WEEKLY;INTERVAL=2;COUNT=8;WKST=SU;BYDAY=TU,TH',
    '1997-09-02',
    ['09-02', '09-04', '09-16', '09-18', '09-30', '10-02', '10-14', '10-16'],
  ],
  ['FREQ=MONTHLY;COUNT=3;BYDAY=-2MO', '1997-09-22', ['09-22', '10-20', '11-17']],
  ['FREQ=MONTHLY;BYDAY=TU,WE,TH;BYSETPOS=3;COUNT=3', '1997-09-04', ['09-04', '10-07', '11-06']],
  ['FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=MO', '1997-08-05', ['08-05', '08-10', '08-19', '08-24']],
  ['FREQ=WEEKLY;INTERVAL=2;COUNT=4;BYDAY=TU,SU;WKST=SU', '1997-08-05', ['08-05', '08-17', '08-19', '08-31']],
])('%s from %s', (text, firstDate, expected) => {
  const dates = recurrenceDates(text, firstDate, { fromDate: '1997-01-01', toDate: '1997-12-31' });
  expect(dates).toEqual(expected.map((day) => `1997-${day}`));
});
