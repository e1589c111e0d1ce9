// Goal: the terminal shows every seat's state in words, and figures that add up. Method: one hand-made view.
import { figuresText, slateText } from '../../../src/cli/slate-text';
import { textTable } from '../../../src/cli/text-table';
import type { GameCard } from '../../../src/slates/game-cards.query';
import type { CrewOfficial } from '../../../src/slates/crew-officials.query';
import type { CrewSeat } from '../../../src/slates/slate-crews.query';
import type { SlateView } from '../../../src/slates/slate-view.query';

const official: CrewOfficial = {
  id: 'o',
  number: '1',
  givenName: 'Ada',
  familyName: 'Test',
  name: 'Ada Test',
  level: 4,
  levelName: 'Step 4',
  active: true,
};
const team = (name: string) => ({ id: name, code: name, name, colour: '' });
const game = (overrides: Partial<GameCard>): GameCard => ({
  id: 'g',
  number: 'G1',
  status: 'CONFIRMED',
  localDate: '2026-11-28',
  localTime: '15:00',
  timeZone: 'Europe/Vienna',
  startsAt: new Date('2026-11-28T14:00:00Z'),
  durationMinutes: 90,
  priority: 1,
  note: '',
  updatedAt: new Date('2026-11-01T00:00:00Z'),
  division: { id: 'd', code: 'S1', name: 'Seniors' },
  venue: { id: 'v', code: 'V', name: 'Dune Hall', town: '' },
  court: null,
  home: team('Terns'),
  away: team('Eiders'),
  ...overrides,
});
const seat = (overrides: Partial<CrewSeat>): CrewSeat => ({
  seat: 'chief',
  official: null,
  locked: false,
  told: null,
  declinedBy: [],
  ...overrides,
});
const told = (reply: 'ACCEPTED' | 'NEEDS-ACTION') => ({
  assignmentId: 'a',
  official,
  sequence: 0,
  reply,
  repliedAt: null,
});
const terms = {
  pairing: 0,
  balance: 10,
  teamRepeat: 0,
  partnerRepeat: 0,
  overLevel: 0,
  reluctant: 0,
  change: 0,
};
const view: SlateView = {
  summary: {
    id: 's',
    name: 'Weekend',
    fromDate: '2026-11-28',
    toDate: '2026-11-29',
    version: 1,
    games: 3,
    cancelledGames: 1,
    seats: { total: 6, filled: 3, open: 2, keptOpen: 1, locked: 1 },
    replies: { awaited: 1, accepted: 1, declined: 0 },
    published: null,
    unpublished: { added: 3, revised: 0, ended: 1 },
    chosen: null,
    latestBuild: null,
  },
  games: [
    { game: game({}), chief: seat({ official, locked: true, told: told('ACCEPTED') }), umpire: seat({}) },
    { game: game({ number: 'G2' }), chief: seat({ official }), umpire: seat({ locked: true }) },
    { game: game({ number: 'G3', status: 'CANCELLED' }), chief: seat({ official }), umpire: seat({}) },
  ],
  review: {
    version: 1,
    preview: { added: [], revised: [], ended: [], unchanged: 0 },
    reasons: ['Ada Test in game G2: is too far away (H7).'],
    cost: { total: 10_050, open: 10_000, travel: 40, ...terms },
    faults: [],
  },
  proposals: [],
  kilometres: 100,
  bound: 10_045,
};

test('every seat says how it stands', () => {
  const text = slateText(view);
  expect(text).toMatch(/G1 .*Dune Hall.*Terns – Eiders.*Ada Test \(4, locked, accepted\) +OPEN/);
  expect(text).toMatch(/G2 .*Ada Test \(4, not told\) +\(kept open\)/);
  expect(text).toMatch(/G3 .*cancelled/);
  expect(text).toContain('Cannot be published:\n  Ada Test in game G2: is too far away (H7).');
  expect(text).toContain('Sat 2026-11-28');
});

test('the figures measure the gap against the cost without open seats', () => {
  expect(figuresText(view)).toBe(
    [
      '3 games; 3 of 6 seats filled, 2 open, 1 kept open',
      'Cost 10050.0 (open seats 10000.0, driving 40.0, fair shares 10.0)',
      'Bound: at most 5.0 above the best possible (10.00 % of the cost without open seats)',
      'Driving 100 km in all',
      'not published; publishing would tell 4 changes (3 new, 0 changed, 1 ended)',
    ].join('\n'),
  );
  expect(figuresText({ ...view, bound: null, kilometres: null })).toContain('nothing proven');
});

test('columns are as wide as what people see in them', () => {
  expect(
    textTable(
      ['a', 'b'],
      [
        ['é', '1'],
        ['long', ''],
      ],
    ),
  ).toBe('a     b\n----  -\né     1\nlong');
});
