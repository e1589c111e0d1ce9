// Goal: an open seat says why it is open, in figures that can be counted again. Method: hand-made slates, one for each
// kind of reason, and the quick explanation on sets whose answer is known.
import { explainOpenSeat, presentSlate, type Assignment, type SlateProblem } from '../../../../src/solver';
import { tallyRules } from '../../../../src/solver/reasons/explain-open-seat';
import { countHallSet } from '../../../../src/solver/reasons/hall-set';
import { quickXplain } from '../../../../src/solver/reasons/quick-xplain';
import { aGame, anOfficial, aProblem, HALL } from '../../../support/solver/slate-builder';

function why(
  problem: SlateProblem,
  crews: Readonly<Record<string, readonly [string | null, string | null]>>,
  seat = 0,
) {
  const assignments = Object.entries(crews).map(([game, [chief, umpire]]): Assignment => ({
    game,
    chief,
    umpire,
  }));
  const { slate, holders } = presentSlate(problem, assignments);
  return explainOpenSeat(slate, holders, seat);
}

const game = aGame('g', '2026-03-07T09:00:00+01:00');

it('says nothing of a seat that is held', () => {
  expect(why(aProblem({ games: [game], officials: [anOfficial('a')] }), { g: ['a', null] })).toBeNull();
});

it('knows a seat that is kept open', () => {
  const games = [{ ...game, locked: { chief: null } }];
  expect(why(aProblem({ games, officials: [anOfficial('a')] }), {})).toMatchObject({ kind: 'kept-open' });
});

it('lists those who may take it at once, the cheapest first', () => {
  const officials = [
    anOfficial('dear', { level: 9 }),
    anOfficial('cheap'),
    anOfficial('no', { mayBeChief: false }),
  ];
  const problem = aProblem({ games: [game], officials, weights: { overLevel: 1 } });
  expect(why(problem, {})).toMatchObject({ kind: 'can-be-filled', officials: ['cheap', 'dear'] });
});

it('counts by rule why nobody is eligible', () => {
  const officials = [
    anOfficial('low', { level: 0 }),
    anOfficial('low and away', { level: 0, available: [] }),
    anOfficial('away', { available: [] }),
    anOfficial('torn', { avoidTeams: ['home of g'] }),
  ];
  expect(why(aProblem({ games: [game], officials }), {})).toMatchObject({
    kind: 'nobody-eligible',
    tally: [
      { rule: 'H1', officials: 2, first: 2, only: 1 },
      { rule: 'H2', officials: 2, first: 1, only: 1 },
      { rule: 'H5', officials: 1, first: 1, only: 1 },
    ],
  });
});

it('names everybody who is held back, and the fewest seats that stand in the way', () => {
  // Two games a day at most: `b` holds two already, `a` works one at the same time.
  const games = [
    game,
    ...['f', 'h', 'i'].map((id, n) => aGame(id, `2026-03-07T${9 + 3 * n}:00:00+01:00`.replace('T9', 'T09'))),
  ];
  const officials = [
    anOfficial('a', { maxGamesPerDay: 2 }),
    anOfficial('b', { maxGamesPerDay: 2 }),
    anOfficial('none', { mayBeChief: false }),
  ];
  const reason = why(
    aProblem({ games, officials }),
    { f: ['a', 'none'], h: ['b', 'none'], i: ['b', 'none'] },
    2,
  );
  expect(reason).toMatchObject({ place: { game: 'g', seat: 'chief' } });
  if (reason?.kind !== 'held-back' && reason?.kind !== 'needed-elsewhere') throw new Error(reason?.kind);
  expect(reason.heldBack).toMatchObject([
    {
      official: 'a',
      reasons: [{ rule: 'H3', message: 'tips off 75 minutes before game f at the same venue ends' }],
      inTheWay: [{ game: 'f', seat: 'chief' }],
    },
    {
      official: 'b',
      reasons: [{ rule: 'H4', message: 'would work 3 games on one day, at most 2' }],
      inTheWay: [
        { game: 'h', seat: 'chief' },
        { game: 'i', seat: 'chief' },
      ],
    },
  ]);
});

describe('Hall sets', () => {
  const level4 = {
    id: 'senior',
    chiefMinLevel: 4,
    umpireMinLevel: 1,
    chiefTargetLevel: 4,
    umpireTargetLevel: 2,
    pairingCost: [0],
  };
  const venues = Array.from({ length: 7 }, (_, i) => ({ id: `gym ${i}`, lat: 45 + 0.1 * i, lon: 8 }));
  const saturday = venues.map((venue, i) =>
    aGame(`sat ${i}`, `2026-03-07T15:${String(5 * i).padStart(2, '0')}:00+01:00`, {
      venue: venue.id,
      division: 'senior',
    }),
  );
  const seniors = Array.from({ length: 5 }, (_, i) => anOfficial(`senior ${i}`, { level: 4 }));
  const juniors = Array.from({ length: 9 }, (_, i) => anOfficial(`junior ${i}`, { level: 2 }));
  const own = { places: [HALL, ...venues], divisions: [level4] };

  it('finds more seats of one afternoon than the five people of that level', () => {
    const problem = aProblem({ games: saturday, officials: [...seniors, ...juniors], own });
    const crews = Object.fromEntries(
      saturday.map(({ id }, i) => [id, [i < 5 ? `senior ${i}` : null, `junior ${i}`] as const]),
    );
    const reason = why(problem, crews, 2 * 6);
    expect(reason).toMatchObject({
      kind: 'needed-elsewhere',
      tally: [{ rule: 'H1', officials: 9, first: 9, only: 9 }],
    });
    if (reason?.kind !== 'needed-elsewhere') throw new Error('no shortage');
    // Of two open seats one is enough to show it: six seats for five people, and none of the six can be left out.
    expect(reason.shortage).toMatchObject({ room: 5, minLevel: 4 });
    expect(reason.shortage.seats).toHaveLength(6);
    expect(reason.shortage.seats).toContainEqual({ game: 'sat 6', seat: 'chief' });
    expect(reason.shortage.officials.map(({ official }) => official).sort()).toEqual(
      seniors.map(({ id }) => id),
    );
    const { slate } = presentSlate(problem, []);
    const seats = reason.shortage.seats.map(({ game: id }) => 2 * slate.gameIds.indexOf(id));
    expect(countHallSet(slate, seats)).toMatchObject({ room: 5 });
    for (const left of seats)
      expect(
        countHallSet(
          slate,
          seats.filter((seat) => seat !== left),
        ),
      ).toBeNull();
  });

  it('counts limits and tours where the games do not all clash', () => {
    // Three games one after the other in one gym; the two seniors may work one a day each.
    const games = [9, 12, 15].map((hour) =>
      aGame(`at ${hour}`, `2026-03-07T${String(hour).padStart(2, '0')}:00:00+01:00`, { division: 'senior' }),
    );
    const officials = seniors.slice(0, 2).map((official) => ({ ...official, maxGamesPerDay: 1 }));
    const problem = aProblem({ games, officials: [...officials, ...juniors], own });
    const reason = why(problem, { 'at 9': ['senior 0', null], 'at 12': ['senior 1', null] }, 4);
    expect(reason).toMatchObject({ kind: 'needed-elsewhere', shortage: { room: 2 } });
  });

  it('finds none where somebody is held back by a partner alone', () => {
    const officials = [anOfficial('a', { avoidOfficials: ['b'] }), anOfficial('b', { mayBeChief: false })];
    const reason = why(aProblem({ games: [game], officials }), { g: [null, 'b'] });
    expect(reason).toMatchObject({
      kind: 'held-back',
      heldBack: [{ official: 'a', reasons: [{ rule: 'H5' }], inTheWay: [] }],
    });
  });
});

it('adds up the first failures to all who may not take the seat', () => {
  const officials = [
    anOfficial('a', { level: 0, available: [] }),
    anOfficial('b'),
    anOfficial('c', { available: [] }),
  ];
  const { slate } = presentSlate(aProblem({ games: [game], officials }), []);
  expect(tallyRules(slate, 0).reduce((sum, { first }) => sum + first, 0)).toBe(2);
});

describe('quick explanation', () => {
  const items = Array.from({ length: 12 }, (_, i) => i);
  it.each([[[3]], [[0, 11]], [[2, 5, 7]], [items]])('finds %j', (conflict) => {
    const fails = (part: readonly number[]) => conflict.every((item) => part.includes(item));
    expect([...quickXplain(items, fails)!].sort((a, b) => a - b)).toEqual(conflict);
  });

  it('gives one that nothing can be left out of, when there are several', () => {
    const conflicts = [
      [1, 4, 9],
      [4, 10],
      [0, 2, 3, 9],
    ];
    const fails = (part: readonly number[]) =>
      conflicts.some((conflict) => conflict.every((item) => part.includes(item)));
    const found = quickXplain(items, fails)!;
    expect(fails(found)).toBe(true);
    for (const item of found) expect(fails(found.filter((other) => other !== item))).toBe(false);
  });

  it('gives nothing when nothing fails, and an empty set when everything does', () => {
    expect(quickXplain(items, () => false)).toBeNull();
    expect(quickXplain(items, () => true)).toEqual([]);
  });
});
