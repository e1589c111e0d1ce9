// Goal: a game's day is the local date of its tip-off, over clock changes and midnight. Method: instants around
// known changes of the IANA zones, and Newfoundland, where clocks went back at 00:01 until 2011.
import { compileSlate, judgeSlate, NOBODY } from '../../../src/solver';
import { aGame, anOfficial, aProblem } from '../../support/solver/slate-builder';

function daysOf(timeZone: string, ...tipOffs: string[]): string[] {
  const games = tipOffs.map((tipOff, i) => aGame(`g${i}`, tipOff));
  const slate = compileSlate(aProblem({ games, own: { timeZone } }));
  return games.map((game) => slate.dayNames[slate.gameDay[slate.gameIds.indexOf(game.id)]!]!);
}

it.each([
  ['Europe/Vienna', '2026-10-24T21:59:00Z', '2026-10-24'],
  ['Europe/Vienna', '2026-10-24T22:00:00Z', '2026-10-25'],
  ['Europe/Vienna', '2026-10-25T22:59:00Z', '2026-10-25'],
  ['Europe/Vienna', '2026-10-25T23:00:00Z', '2026-10-26'],
  ['Pacific/Kiritimati', '2026-10-24T10:00:00Z', '2026-10-25'],
  ['Asia/Kathmandu', '2026-10-24T18:14:59Z', '2026-10-24'],
  ['Asia/Kathmandu', '2026-10-24T18:15:00Z', '2026-10-25'],
])('%s: %s is on %s', (zone, instant, day) => {
  expect(daysOf(zone, instant)).toEqual([day]);
});

it('orders games by day, then tip-off, then id, whatever the order of the file', () => {
  const games = [
    aGame('b', '2026-03-08T09:00:00Z'),
    aGame('c', '2026-03-07T09:00:00Z'),
    aGame('a', '2026-03-08T09:00:00Z'),
  ];
  expect(compileSlate(aProblem({ games })).gameIds).toEqual(['c', 'a', 'b']);
});

it('knows that a date can begin twice, and judges rest by the instants', () => {
  // St John's, 29 October 2006: 00:01 daylight time was followed by 23:01 of the day before.
  const games = [
    aGame('after midnight', '2006-10-29T02:30:30Z', { durationMinutes: 1 }),
    aGame('evening again', '2006-10-29T02:45:00Z', { durationMinutes: 1 }),
  ];
  const policy = { arrivalLeadMinutes: 0, wrapUpMinutes: 0, minRestMinutes: 0 };
  const available = [{ from: '2006-01-01T00:00:00Z', to: '2007-01-01T00:00:00Z' }];
  const slate = compileSlate(
    aProblem({
      games,
      officials: [anOfficial('o', { available })],
      policy,
      own: { timeZone: 'America/St_Johns' },
    }),
  );
  expect(slate.dayNames).toEqual(['2006-10-29', '2006-10-28']);
  expect(judgeSlate(slate, Int32Array.of(0, NOBODY, 0, NOBODY))).toEqual([]);
});
