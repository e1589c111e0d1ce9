// Goal: the crews that a game may ask for are those that order and minors allow, at the price of the pair. Method:
// one game and a handful of officials, listed by hand.
import { compileSlate, type Game } from '../../../../src/solver';
import { listCrewChoices } from '../../../../src/solver/bound/crew-choice';
import { aGame, anOfficial, aProblem } from '../../../support/solver/slate-builder';

/** Crews as "chief/umpire: pairing + open", by level, minors with an m; nobody is a dash. */
function crewsOf(locked: Game['locked']): string[] {
  const slate = compileSlate(
    aProblem({
      officials: [
        anOfficial('expert', { level: 4 }),
        anOfficial('adult', { level: 2 }),
        anOfficial('kid', { level: 2, minor: true }),
        anOfficial('trainee', { level: 1, minor: true, mayBeChief: false }),
      ],
      games: [aGame('g', '2026-03-07T09:00:00Z', { priority: 2, ...(locked ? { locked } : {}) })],
      weights: { openSeat: 100 },
    }),
  );
  const name = (k: number) =>
    k === slate.classCount ? '-' : `${slate.classLevel[k]}${slate.classMinor[k] === 1 ? 'm' : ''}`;
  const { start, chiefClass, umpireClass, cost, openCost } = listCrewChoices(slate);
  expect(start[1]).toBe(cost.length);
  return [...cost]
    .map((pairing, i) => `${name(chiefClass[i]!)}/${name(umpireClass[i]!)}: ${pairing} + ${openCost[i]}`)
    .sort();
}

it('leaves out umpires above their chief, two minors, and minors alone', () => {
  // The table for gaps 0, 1 and more is 6, 0, 2; an open seat costs 100 times the priority of 2.
  expect(crewsOf(undefined)).toEqual(
    [
      '4/4: 6 + 0',
      '4/2: 2 + 0',
      '4/2m: 2 + 0',
      '4/1m: 2 + 0',
      '4/-: 0 + 200',
      '2/2: 6 + 0',
      '2/2m: 6 + 0',
      '2/1m: 0 + 0',
      '2/-: 0 + 200',
      '2m/2: 6 + 0',
      '-/4: 0 + 200',
      '-/2: 0 + 200',
      '-/-: 0 + 400',
    ].sort(),
  );
});

it('keeps to locks: the official, or nobody at no cost', () => {
  expect(crewsOf({ chief: 'adult', umpire: null })).toEqual(['2/-: 0 + 0']);
  expect(crewsOf({ umpire: 'trainee' })).toEqual(['2/1m: 0 + 0', '4/1m: 2 + 0']);
  expect(crewsOf({ chief: null })).toEqual(['-/-: 0 + 200', '-/2: 0 + 0', '-/4: 0 + 0']);
});
