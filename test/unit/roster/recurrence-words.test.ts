import { recurrenceWords } from '../../../src/roster/recurrence-words';

// Goal: a rule is told in words where all of it has words, and as it stands otherwise.
test.each([
  ['FREQ=WEEKLY', 'every week'],
  [
    'FREQ=WEEKLY;BYDAY=MO,WE,FR;UNTIL=20270531T215959Z',
    'every week on Mondays, Wednesdays and Fridays until 2027-05-31',
  ],
  ['FREQ=WEEKLY;INTERVAL=2;BYDAY=SU;WKST=MO;COUNT=5', 'every 2 weeks on Sundays 5 times'],
  ['FREQ=MONTHLY;BYDAY=1SA', 'FREQ=MONTHLY;BYDAY=1SA'],
  ['FREQ=YEARLY;BYMONTH=12', 'FREQ=YEARLY;BYMONTH=12'],
])('the rule %s reads %s', (rule, words) => {
  expect(recurrenceWords(rule)).toBe(words);
});
