// Goal: each hard rule alone, at its limit and one step beyond, with the figures in its words. Method: slates of
// one or two games made by hand; the independent checker has to name the same rule.
import { checkAnswer, compileSlate, judgeSlate, NOBODY, type SlateProblem } from '../../../src/solver';
import { writeAnswer } from '../../../src/solver/solve/write-answer';
import { aGame, anOfficial, aProblem, HALL } from '../../support/solver/slate-builder';

type Crews = Readonly<Record<string, readonly [string | null, string | null]>>;

/** What rules and checker say about given crews: `H2: message`, and the checker's rule ids. */
function judged(problem: SlateProblem, crews: Crews): { messages: string[]; checkerRules: string[] } {
  const slate = compileSlate(problem);
  const holders = new Int32Array(2 * slate.gameCount).fill(NOBODY);
  for (const [game, crew] of Object.entries(crews)) {
    crew.forEach((id, side) => {
      if (id !== null) holders[2 * slate.gameIds.indexOf(game) + side] = slate.officialIds.indexOf(id);
    });
  }
  const messages = judgeSlate(slate, holders).map(({ rule, message }) => `${rule}: ${message}`);
  const report = checkAnswer(problem, writeAnswer(problem, slate, holders, { bound: null, seconds: 0 }));
  expect(report.mismatches).toEqual([]);
  return { messages, checkerRules: report.violations.map(({ rule }) => rule) };
}

function expectBroken(problem: SlateProblem, crews: Crews, ...messages: string[]): void {
  const found = judged(problem, crews);
  expect(found.messages).toEqual(messages);
  expect(found.checkerRules).toEqual(messages.map((message) => message.split(':')[0]));
}

function expectLegal(problem: SlateProblem, crews: Crews): void {
  expectBroken(problem, crews);
}

const NINE = '2026-03-07T09:00:00+01:00';
const game = aGame('g', NINE);
/** A place 30 measured minutes away, and one that has the middle of a detour. */
const AWAY = { id: 'away', lat: 45.3, lon: 8 };
const WAY = { from: 'hall', to: 'away', minutes: 30, metres: 25_000 };
const twoPlaces = {
  places: [HALL, AWAY],
  travel: { circuity: 1.3, speedKmh: 60, fixedMinutes: 4, legs: [WAY] },
};

describe('H1 seat', () => {
  it('asks the chief for permission and level, the umpire for level', () => {
    const divisions = [{ ...aProblem({}).divisions[0]!, chiefMinLevel: 3, umpireMinLevel: 2 }];
    const own = { divisions };
    const problem = aProblem({
      games: [game],
      officials: [
        anOfficial('new', { level: 1 }),
        anOfficial('two', { level: 2 }),
        anOfficial('not', { mayBeChief: false }),
      ],
      own,
    });
    expectBroken(problem, { g: ['two', null] }, 'H1: has level 2, the chief seat asks for level 3');
    expectBroken(problem, { g: ['not', null] }, 'H1: may not be chief');
    expectBroken(problem, { g: [null, 'new'] }, 'H1: has level 1, the umpire seat asks for level 2');
    expectLegal(problem, { g: [null, 'two'] });
  });

  it('refuses one person in both seats', () => {
    const problem = aProblem({ games: [game], officials: [anOfficial('a')] });
    expectBroken(problem, { g: ['a', 'a'] }, 'H1: holds both seats of the game');
  });
});

describe('H2 availability', () => {
  // Duty: 08:40 to 10:25.
  const withWindows = (...available: { from: string; to: string }[]) =>
    aProblem({ games: [game], officials: [anOfficial('a', { available })] });
  const at = (time: string) => `2026-03-07T${time}:00+01:00`;

  it('covers the whole duty, to the minute', () => {
    expectLegal(withWindows({ from: at('08:40'), to: at('10:25') }), { g: ['a', null] });
    const late = withWindows({ from: at('08:41'), to: at('12:00') });
    expectBroken(late, { g: ['a', null] }, 'H2: is available only from 1 minutes after the duty starts');
    const short = withWindows({ from: at('08:00'), to: at('10:15') });
    expectBroken(short, { g: ['a', null] }, 'H2: is available only until 10 minutes before the duty ends');
    expectBroken(withWindows(), { g: ['a', null] }, 'H2: is not available at any time of this duty');
  });

  it('joins windows that touch, whatever their order, and not those a minute apart', () => {
    expectLegal(withWindows({ from: at('09:30'), to: at('12:00') }, { from: at('08:00'), to: at('09:30') }), {
      g: ['a', null],
    });
    const gap = withWindows({ from: at('08:00'), to: at('09:30') }, { from: at('09:31'), to: at('12:00') });
    expect(judged(gap, { g: ['a', null] }).checkerRules).toEqual(['H2']);
    expect(judged(gap, { g: ['a', null] }).messages[0]).toMatch(/^H2: /);
  });
});

describe('H3 between games', () => {
  const officials = [anOfficial('a')];
  it('wants the gap between end and tip-off at one venue', () => {
    const pair = (second: string) =>
      aProblem({ officials, games: [game, aGame('h', `2026-03-07T${second}:00+01:00`)] });
    expectLegal(pair('10:20'), { g: ['a', null], h: ['a', null] });
    expectBroken(
      pair('10:19'),
      { g: ['a', null], h: ['a', null] },
      'H3: needs 5 minutes after game g at the same venue, has 4',
    );
  });

  it('wants the way between two duties elsewhere', () => {
    // First duty ends 10:25, the second begins 20 minutes before its tip-off.
    const pair = (second: string) =>
      aProblem({
        officials,
        games: [game, aGame('h', `2026-03-07T${second}:00+01:00`, { venue: 'away' })],
        own: twoPlaces,
      });
    expectLegal(pair('11:15'), { g: ['a', null], h: ['a', null] });
    expectBroken(
      pair('11:14'),
      { g: ['a', null], h: ['a', null] },
      'H3: needs 30 minutes to get there from game g, has 29',
    );
  });

  it('compares neighbours only, so that a middle game can make a tour possible', () => {
    const middle = { id: 'middle', lat: 45.1, lon: 8 };
    const legs = [
      { from: 'hall', to: 'away', minutes: 300, metres: 1 },
      { from: 'hall', to: 'middle', minutes: 10, metres: 1 },
      { from: 'middle', to: 'away', minutes: 10, metres: 1 },
    ];
    const games = [
      game,
      aGame('m', '2026-03-07T11:00:00+01:00', { venue: 'middle' }),
      aGame('z', '2026-03-07T13:00:00+01:00', { venue: 'away' }),
    ];
    const problem = aProblem({
      officials,
      games,
      own: { places: [HALL, middle, AWAY], travel: { ...twoPlaces.travel, legs } },
    });
    expectLegal(problem, { g: ['a', null], m: ['a', null], z: ['a', null] });
    expect(judged(problem, { g: ['a', null], z: ['a', null] }).checkerRules).toEqual(['H3']);
  });
});

describe('H4 load', () => {
  it('limits games a day and games in the slate', () => {
    const games = [game, aGame('h', '2026-03-07T12:00:00+01:00'), aGame('i', '2026-03-08T12:00:00+01:00')];
    const officials = [anOfficial('day', { maxGamesPerDay: 1 }), anOfficial('slate', { maxGames: 2 })];
    const problem = aProblem({ games, officials });
    expectBroken(
      problem,
      { g: ['day', null], h: ['day', null] },
      'H4: would work 2 games on one day, at most 1',
    );
    expectLegal(problem, { g: ['day', null], i: ['day', null] });
    expectBroken(
      problem,
      { g: ['slate', null], h: ['slate', null], i: ['slate', null] },
      'H4: would work 3 games in the slate, at most 2',
    );
  });
});

describe('H5 conflicts', () => {
  it('keeps officials from teams, venues and each other, whichever side says so', () => {
    const officials = [
      anOfficial('team', { avoidTeams: ['home of g'] }),
      anOfficial('venue', { avoidVenues: ['hall'] }),
      anOfficial('one', { avoidOfficials: ['other'] }),
      anOfficial('other'),
    ];
    const problem = aProblem({ games: [game], officials });
    expectBroken(problem, { g: ['team', null] }, 'H5: avoids team home of g');
    expectBroken(problem, { g: [null, 'venue'] }, 'H5: avoids venue hall');
    expectBroken(problem, { g: ['other', 'one'] }, 'H5: other and one avoid each other');
  });
});

describe('H6 locks', () => {
  it('keeps locked seats as they are', () => {
    const locked = aGame('g', NINE, { locked: { chief: 'a', umpire: null } });
    const problem = aProblem({ games: [locked], officials: [anOfficial('a'), anOfficial('b')] });
    expectLegal(problem, { g: ['a', null] });
    expectBroken(problem, { g: ['b', null] }, 'H6: the chief seat is locked to a');
    expectBroken(problem, { g: ['a', 'b'] }, 'H6: the umpire seat is kept open on purpose');
  });
});

describe('H7 reach', () => {
  it('counts the minutes from home', () => {
    const problem = (maxHomeMinutes: number) =>
      aProblem({
        games: [game],
        officials: [anOfficial('a', { home: 'away', maxHomeMinutes })],
        own: twoPlaces,
      });
    expectLegal(problem(30), { g: ['a', null] });
    expectBroken(problem(29), { g: ['a', null] }, 'H7: needs 30 minutes from home, accepts at most 29');
  });
});

describe('H8 minors and H9 order', () => {
  const officials = [
    anOfficial('kid', { minor: true, level: 2 }),
    anOfficial('boy', { minor: true, level: 2 }),
    anOfficial('adult', { level: 2 }),
    anOfficial('top', { level: 4 }),
  ];
  const problem = aProblem({ games: [game], officials });

  it('puts an adult beside every minor', () => {
    expectBroken(problem, { g: ['kid', 'boy'] }, 'H8: kid and boy are both minors');
    expectBroken(problem, { g: ['kid', null] }, 'H8: kid is a minor and the other seat is open');
    expectBroken(problem, { g: [null, 'kid'] }, 'H8: kid is a minor and the other seat is open');
    expectLegal(problem, { g: ['adult', 'kid'] });
  });

  it('lets nobody be chief of somebody more experienced', () => {
    expectBroken(problem, { g: ['adult', 'top'] }, "H9: the chief has level 2, below the umpire's level 4");
    expectLegal(problem, { g: ['top', 'adult'] });
  });
});

describe('H10 rest', () => {
  // The night of 24 to 25 October 2026 gains an hour in Vienna. The Saturday duty ends 23:25 summer time (21:25 UTC)
  // and the Sunday duty begins 08:40 winter time (07:40 UTC): 615 minutes, less an hour of driving.
  const games = [
    aGame('late', '2026-10-24T22:00:00+02:00', { venue: 'away' }),
    aGame('early', '2026-10-25T09:00:00+01:00', { venue: 'away' }),
  ];
  const problem = (minRestMinutes: number) =>
    aProblem({ games, officials: [anOfficial('a')], policy: { minRestMinutes }, own: twoPlaces });
  const both: Crews = { late: ['a', null], early: ['a', null] };

  it('counts the hours at home, over a clock change too', () => {
    expectLegal(problem(555), both);
    expectBroken(problem(556), both, 'H10: needs 556 minutes of rest at home after game late, has 555');
  });

  it('does not look at two games of one day', () => {
    const sameDay = [game, aGame('h', '2026-03-07T12:00:00+01:00')];
    expectLegal(aProblem({ games: sameDay, officials: [anOfficial('a')] }), {
      g: ['a', null],
      h: ['a', null],
    });
  });
});
