import { isMinorOn } from '../../../src/roster/minors';

test.each([
  ['2008-06-15', '2026-06-14', true],
  ['2008-06-15', '2026-06-15', false],
  ['2008-12-31', '2027-01-01', false],
  // Born on 29 February: of age on 1 March where there is no such day.
  ['2008-02-29', '2026-02-28', true],
  ['2008-02-29', '2026-03-01', false],
  [null, '2026-03-01', false],
])('born %s, on %s: a minor is %s', (birthDate, date, expected) => {
  expect(isMinorOn(birthDate, date, 18)).toBe(expected);
});

test('the age of majority is the association’s', () => {
  expect(isMinorOn('2008-06-15', '2027-06-14', 19)).toBe(true);
  expect(isMinorOn('2008-06-15', '2027-06-15', 19)).toBe(false);
});
