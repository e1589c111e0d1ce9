import { render } from 'preact-render-to-string';
import { readiness } from '../../../../src/slates/slate-list.page';
import { seatState } from '../../../../src/slates/seat-state';
import type { CrewGame, CrewSeat } from '../../../../src/slates/slate-crews.query';
import type { SlateSummary } from '../../../../src/slates/slate-summary.query';
import { WeekendFloor } from '../../../../src/slates/weekend-floor.part';
import { layWeekend } from '../../../../src/slates/weekend-layout';

// Goal: the picture of a weekend shows every game once, on its court and at its time, and every state of a seat differently.
// Method: the layout and the drawing with made-up games.
const official = (name: string, level = 3) => ({
  id: name,
  number: name,
  givenName: name,
  familyName: 'Test',
  name: `${name} Test`,
  level,
  levelName: `Step ${level}`,
  active: true,
});
const seat = (change: Partial<CrewSeat> = {}): CrewSeat => ({
  seat: 'chief',
  official: official('Ada'),
  locked: false,
  told: null,
  declinedBy: [],
  ...change,
});
const told = (name: string, reply: 'NEEDS-ACTION' | 'ACCEPTED') => ({
  assignmentId: 'a',
  official: official(name),
  sequence: 0,
  reply,
  repliedAt: null,
});

function game(
  number: string,
  change: Partial<CrewGame['game']> = {},
  seats: Partial<CrewGame> = {},
): CrewGame {
  return {
    game: {
      id: number,
      number,
      status: 'CONFIRMED',
      localDate: '2026-11-28',
      localTime: '15:00',
      timeZone: 'Europe/Vienna',
      startsAt: new Date('2026-11-28T14:00:00Z'),
      durationMinutes: 90,
      priority: 1,
      note: '',
      updatedAt: new Date('2026-11-01T00:00:00Z'),
      division: { id: 'd', code: 'U14', name: 'Under 14' },
      venue: { id: 'v', code: 'V', name: 'Hall', town: '' },
      court: { id: 'c', name: '1' },
      home: { id: 'h', code: 'HOM', name: 'Home', colour: '' },
      away: { id: 'w', code: 'AWY', name: 'Away', colour: '' },
      ...change,
    },
    chief: seat(),
    umpire: seat({ seat: 'umpire', official: official('Bea', 2) }),
    ...seats,
  };
}

test.each([
  [seat({ official: null }), 'open', 'open'],
  [seat({ official: null, locked: true }), 'none', 'kept open'],
  [seat({ official: null, declinedBy: [official('Cleo')] }), 'declined', 'open, declined by Cleo Test'],
  [seat(), 'planned', 'not told yet'],
  [seat({ locked: true }), 'locked', 'locked, not told yet'],
  [seat({ told: told('Ada', 'NEEDS-ACTION') }), 'asked', 'no answer yet'],
  [seat({ told: told('Ada', 'ACCEPTED') }), 'accepted', 'accepted'],
  [seat({ told: told('Dora', 'ACCEPTED') }), 'attention', 'not told yet, in place of Dora Test'],
])('a seat is told by its mark and its words (%#)', (given, mark, words) => {
  expect(seatState(given)).toEqual({ mark, words });
});

test('games lie on their courts by time; two that overlap lie on lanes of their own', () => {
  const days = layWeekend([
    game('late', { localTime: '16:45' }),
    game('early'),
    game('clash', { localTime: '16:00' }),
    game('other court', { court: { id: 'c2', name: '2' } }),
    game('no court', { court: null }),
    game('sunday', { localDate: '2026-11-29', localTime: '23:00', durationMinutes: 120 }),
  ]);
  expect(days.map(({ date }) => date)).toEqual(['2026-11-28', '2026-11-29']);
  const lanes = days[0]?.lanes.map(({ courtName, bars }) => [
    courtName,
    ...bars.map(({ crew }) => crew.game.number),
  ]);
  expect(lanes).toEqual([
    ['no court yet', 'no court'],
    ['court 1', 'early', 'late'],
    ['court 1', 'clash'],
    ['court 2', 'other court'],
  ]);
  expect([days[0]?.fromHour, days[0]?.toHour]).toEqual([15, 19]);
  expect([days[1]?.fromHour, days[1]?.toHour]).toEqual([23, 25]);
  expect(layWeekend([])).toEqual([]);
});

test('every game is drawn once, with both ends, and hostile names as text', () => {
  const hostile = '</text><script>alert(1)</script>';
  const games = [
    game('one', {}, { chief: seat({ official: null }) }),
    game('two', { localTime: '17:00', home: { id: 'h', code: hostile, name: hostile, colour: '' } }),
    game(
      'three',
      { localTime: '19:00', status: 'CANCELLED' },
      { umpire: seat({ official: official(hostile), locked: true }) },
    ),
  ];
  const html = render(<WeekendFloor games={games} language="en-GB" />);
  expect(html.match(/class="bar"/g)).toHaveLength(3);
  expect(html.match(/class="end /g)).toHaveLength(6);
  expect(html.match(/class="end open"/g)).toHaveLength(1);
  expect(html.match(/class="bracket"/g)).toHaveLength(1);
  expect(html.match(/class="cancelled"/g)).toHaveLength(1);
  expect(html).not.toContain('<script>');
  expect(html).not.toMatch(/ style=|NaN|undefined/);
});

test('a slate says what stands between it and a settled weekend, the nearest step first', () => {
  const summary: SlateSummary = {
    id: 's',
    name: 'S',
    fromDate: '2026-11-28',
    toDate: '2026-11-29',
    version: 1,
    games: 2,
    cancelledGames: 0,
    seats: { total: 4, filled: 0, open: 4, keptOpen: 0, locked: 0 },
    replies: { awaited: 0, accepted: 0, declined: 0 },
    published: null,
    unpublished: { added: 0, revised: 0, ended: 0 },
    chosen: null,
    latestBuild: null,
  };
  const words = (change: Partial<SlateSummary>) =>
    readiness({ ...summary, ...change }).map((line) => line.words);
  expect(words({ games: 0 })).toEqual(['no games yet']);
  expect(words({})).toEqual(['no crews yet: build it']);
  expect(words({ latestBuild: { id: 'b', label: 'B', state: 'solving', progress: null } })[0]).toBe(
    'being built now',
  );
  expect(
    words({
      seats: { ...summary.seats, filled: 3, open: 1 },
      unpublished: { added: 3, revised: 0, ended: 0 },
    }),
  ).toEqual(['1 open seat', 'not published yet']);
  expect(
    words({
      seats: { ...summary.seats, filled: 4, open: 0 },
      published: { number: 1, at: new Date(0), changes: { added: 4, revised: 0, ended: 0 } },
      unpublished: { added: 1, revised: 0, ended: 0 },
      replies: { awaited: 1, accepted: 2, declined: 1 },
    }),
  ).toEqual(['1 change not published yet', '1 declined', '1 without an answer', '2 accepted']);
});
