// Goal: the demo's lists pass their own importers on any day, including the days around a clock change, a leap day and the turn
// of the year, and hold the awkward cases that they promise.
import { isMinorOn } from '../../../src/roster/minors';
import { plannedDemo } from '../../support/demo/planned-demo';

const days = [
  '2026-03-27',
  '2026-03-29',
  '2026-03-30',
  '2026-10-23',
  '2026-10-25',
  '2028-02-29',
  '2026-12-31',
  '2027-01-01',
];

test.each(days)('on %s every list is taken in without a fault', async (today) => {
  const { plan, records } = await plannedDemo(today);
  expect(plan.faults).toEqual([]);
  expect(Object.fromEntries(plan.kinds.map(({ kind, added }) => [kind, added.length]))).toMatchObject({
    levels: 5,
    venues: 14,
    officials: 60,
    divisions: 8,
    teams: 40,
    games: 516,
    crews: 427,
  });
  const minors = records('officials').filter(({ birthDate }) => isMinorOn(String(birthDate), today, 18));
  expect(minors).toHaveLength(10);
  expect(
    minors.every(({ guardianName, guardianContact }) => guardianName !== '' && guardianContact !== ''),
  ).toBe(true);
});

test('the awkward cases', async () => {
  const { plan, records } = await plannedDemo('2026-11-25');
  const notices = plan.notices.map(({ file, message }) => `${file} ${message}`);
  expect(notices).toEqual([
    'seed/games.csv Venue SEA-A, court 3 has game MC-902 at 2026-12-06 18:30 too.',
    'seed/games.csv Venue SEA-A, court 3 has game MC-901 at 2026-12-06 18:00 too.',
  ]);
  const gamesBetween = (from: string, to: string) =>
    records('games').filter(({ date }) => from <= String(date) && String(date) <= to);
  expect(gamesBetween('2026-11-28', '2026-11-29')).toHaveLength(42);
  expect(gamesBetween('2026-12-05', '2026-12-06')).toHaveLength(46);
  expect(gamesBetween('2026-12-07', '2027-12-31')).toEqual([]);
  expect(records('conflicts').filter(({ otherOfficial }) => otherOfficial !== null)).toHaveLength(1);
  expect(
    records('officials').filter(({ certificateExpiresOn }) => String(certificateExpiresOn) < '2026-12-25'),
  ).toHaveLength(2);
  expect(
    records('venues')
      .filter(({ defibrillator }) => defibrillator === '')
      .map(({ code }) => code),
  ).toEqual(['DUN-H', 'PEB-H', 'KEL-H']);
});
