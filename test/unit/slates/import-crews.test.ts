// Goal: past crews are taken in, coming and impossible ones are refused by line. Method: the pure planner on texts.
import { isEmptyPlan } from '../../../src/games/imports/import-plan';
import { crewsKind } from '../../../src/slates/import-crews';
import { after, basics, kinds, planned, type Entries } from '../games/imported';

const games = [
  'number,division,venue,date,time,home,away,status',
  'G1,D1,NORTH,2026-05-02,14:00,HER,TER,',
  'G2,D1,NORTH,2026-05-02,15:40,TER,GUL,',
  'G3,D1,SOUTH,2026-05-02,16:00,HER,GUL,',
  'G4,D1,SOUTH,2026-06-06,16:00,HER,GUL,',
  'G5,D1,SOUTH,2026-05-09,16:00,HER,GUL,CANCELLED',
  '',
].join('\n');
const established = after(planned({ ...basics, games }));
const crews = (lines: string, entries: Entries = established) =>
  planned({ crews: `game,chief,umpire\n${lines}\n` }, entries, {}, [...kinds, crewsKind.kind]);

test('a past crew is history; the same file again changes nothing', () => {
  const plan = crews('G1,1001,1002\nG2,1001,1002');
  expect(plan.faults).toEqual([]);
  expect(plan.kinds[0]?.added.map(({ record }) => record)).toEqual([
    { game: 'G1', chief: '1001', umpire: '1002', origin: 'list' },
    { game: 'G2', chief: '1001', umpire: '1002', origin: 'list' },
  ]);
  expect(isEmptyPlan(crews('G1,1001,1002\nG2,1001,1002', after(plan, established)))).toBe(true);
});

test.each([
  ['G4,1001,1002', 'game', 'not over'],
  ['G5,1001,1002', 'game', 'cancelled'],
  ['G9,1001,1002', 'game', 'no game "G9"'],
  ['G1,1001,1001', 'umpire', 'both seats'],
  ['G1,,', 'chief', 'names nobody'],
  ['G1,1001,1009', 'umpire', 'no official "1009"'],
])('%s is refused', (line, column, message) => {
  expect(crews(line).faults).toEqual([
    expect.objectContaining({ column, message: expect.stringContaining(message) as unknown }),
  ]);
});

test('nobody works in two places at once: 20 and 15 minutes belong to each duty', () => {
  // G2 ends at 17:20 in the other hall; G1 ends at 15:40, when G2 begins in the same one.
  const plan = crews('G1,1001,\nG2,1001,\nG3,1001,');
  expect(plan.faults.map(({ line, column, message }) => `${line}:${column} ${message}`)).toEqual([
    '2:chief Official 1001 was on duty in game G3 at that time.',
    '3:chief Official 1001 was on duty in game G3 at that time.',
    '4:chief Official 1001 was on duty in game G1 at that time.',
  ]);
});

test('a crew that a slate published is not changed by a list', () => {
  const published: Entries = new Map([
    ...established,
    ['crews', new Map([['G1', { game: 'G1', chief: '1001', umpire: '1002', origin: 'slate' }]])],
  ]);
  expect(isEmptyPlan(crews('G1,1001,1002', published))).toBe(true);
  expect(crews('G1,1001,', published).faults[0]?.message).toBe('This crew was published from a slate.');
});
