// Goal: targets are the documented shares. Method: cases small enough to work out by hand, and properties.
import { targetGames, type TargetInput } from '../../../src/slates/target-games';

const input = (id: string, overrides: Partial<TargetInput> = {}): TargetInput => ({
  id,
  priorGames: 0,
  wishedGames: null,
  maxGames: 4,
  maxGamesPerDay: 2,
  playableGamesByDate: new Map([
    ['sat', 10],
    ['sun', 10],
  ]),
  ...overrides,
});

describe('target games', () => {
  it('shares a slate evenly among equals', () => {
    const targets = targetGames([input('a'), input('b'), input('c'), input('d')], { games: 3, seats: 6 });
    expect([...targets.values()]).toEqual([1.5, 1.5, 1.5, 1.5]);
  });

  it('gives in proportion to availability and wish', () => {
    const half = new Map([['sat', 10]]);
    const targets = targetGames(
      [
        input('a', { wishedGames: 2 }),
        input('b', { wishedGames: 2, playableGamesByDate: half }),
        input('c', { wishedGames: 1 }),
      ],
      { games: 20, seats: 4 },
    );
    // Weights 2, 1 and 1; seats 4.
    expect(Object.fromEntries(targets)).toEqual({ a: 2, b: 1, c: 1 });
  });

  it('deals out again what somebody has no room for', () => {
    const targets = targetGames([input('a', { wishedGames: 1 }), input('b'), input('c')], {
      games: 20,
      seats: 7,
    });
    // Weights 1, 4, 4 would give a 7/9; within room. With 9 and more seats a is full.
    expect(targets.get('a')).toBeCloseTo(7 / 9, 3);
    const more = targetGames([input('a', { wishedGames: 0.5 }), input('b'), input('c')], {
      games: 20,
      seats: 8.5,
    });
    expect(Object.fromEntries(more)).toEqual({ a: 0.5, b: 4, c: 4 });
  });

  it('lets who had fewer games so far catch up, and who had more rest', () => {
    const targets = targetGames([input('a', { priorGames: 2 }), input('b', { priorGames: 4 })], {
      games: 20,
      seats: 4,
    });
    // Fair so far is 3 each, the slate brings 2 each.
    expect(Object.fromEntries(targets)).toEqual({ a: 5, b: 5 });
  });

  it('never asks beyond the wish to catch up', () => {
    const targets = targetGames(
      [input('new', { wishedGames: 1 }), input('old', { priorGames: 30, wishedGames: 1 })],
      { games: 20, seats: 2 },
    );
    expect(targets.get('new')).toBe(1);
    expect(targets.get('old')).toBe(16);
  });

  it('sets the target of who cannot come to what they had', () => {
    const targets = targetGames(
      [input('away', { priorGames: 7, playableGamesByDate: new Map() }), input('here')],
      { games: 20, seats: 4 },
    );
    expect(targets.get('away')).toBe(7);
  });

  it('counts a day for no more games than may be worked on it', () => {
    const oneDay = new Map([['sat', 10]]);
    const targets = targetGames([input('a', { playableGamesByDate: oneDay })], { games: 10, seats: 20 });
    expect(targets.get('a')).toBe(2);
  });

  it('survives an empty slate and no officials', () => {
    expect(targetGames([], { games: 0, seats: 0 }).size).toBe(0);
    expect(
      targetGames([input('a', { priorGames: 3, playableGamesByDate: new Map() })], {
        games: 0,
        seats: 0,
      }).get('a'),
    ).toBe(3);
  });
});
