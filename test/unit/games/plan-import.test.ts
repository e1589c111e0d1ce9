// Goal: files in any order become the right plan; every fault is told at its place with a remedy; the same files again change
// nothing. Method: the pure planner on texts, no database.
import { isEmptyPlan } from '../../../src/games/imports/import-plan';
import { after, basics, planned, type Entries } from './imported';

const games = [
  'number,division,venue,court,date,time,home,away,status,note',
  'G1,D1,NORTH,A,2026-09-05,14:00,HER,TER,,',
  'G2,D1,SOUTH,,06.09.2026,15:30,TER,GUL,TENTATIVE,"opening, with music"',
  '',
].join('\n');

function established(): Entries {
  return after(planned({ ...basics, games }));
}

describe('what would happen', () => {
  test('everything is new, whatever order the files come in', () => {
    const forwards = planned({ ...basics, games });
    const backwards = planned(Object.fromEntries(Object.entries({ ...basics, games }).reverse()));
    expect(forwards.faults).toEqual([]);
    expect(backwards).toEqual(forwards);
    expect(forwards.kinds.map(({ kind, added }) => `${kind} ${added.length}`).sort()).toEqual([
      'divisions 1',
      'games 2',
      'levels 3',
      'officials 2',
      'teams 3',
      'venues 3',
    ]);
    expect(forwards.kinds.find(({ kind }) => kind === 'games')?.added[1]?.record).toEqual({
      number: 'G2',
      division: 'D1',
      venue: 'SOUTH',
      court: null,
      date: '2026-09-06',
      time: '15:30',
      utcOffset: null,
      home: 'TER',
      away: 'GUL',
      durationMinutes: 100,
      priority: 1.5,
      status: 'TENTATIVE',
      note: 'opening, with music',
      timeZone: 'Europe/Copenhagen',
    });
  });

  test('the same files again change nothing', () => {
    const plan = planned({ ...basics, games }, established());
    expect(plan.faults).toEqual([]);
    expect(isEmptyPlan(plan)).toBe(true);
    expect(plan.kinds.map(({ left }) => left).reduce((sum, count) => sum + count)).toBe(14);
  });

  test('a moved and a cancelled game are recognised by their numbers, field by field', () => {
    const changed = games
      .replace('NORTH,A,2026-09-05,14:00', 'SOUTH,A,2026-09-06,16:15')
      .replace('TENTATIVE', 'cancelled');
    const plan = planned({ games: changed }, established());
    expect(plan.faults).toEqual([]);
    expect(plan.kinds[0]?.changed.map(({ key, fields }) => ({ key, fields }))).toEqual([
      {
        key: 'G1',
        fields: [
          { field: 'venue', before: 'NORTH', after: 'SOUTH' },
          { field: 'date', before: '2026-09-05', after: '2026-09-06' },
          { field: 'time', before: '14:00', after: '16:15' },
        ],
      },
      { key: 'G2', fields: [{ field: 'status', before: 'TENTATIVE', after: 'CANCELLED' }] },
    ]);
  });

  test('a column that the file lacks leaves the field alone; an empty cell sets it to its default', () => {
    const lacking = 'number,division,venue,date,time,home,away\nG2,D1,SOUTH,2026-09-06,15:30,TER,GUL\n';
    expect(isEmptyPlan(planned({ games: lacking }, established()))).toBe(true);
    const emptied = 'number,division,venue,date,time,home,away,note\nG2,D1,SOUTH,2026-09-06,15:30,TER,GUL,\n';
    expect(planned({ games: emptied }, established()).kinds[0]?.changed[0]?.fields).toEqual([
      { field: 'note', before: 'opening, with music', after: '' },
    ]);
  });

  test('two files of one kind are one list', () => {
    const [head, first, second] = games.split('\n');
    const plan = planned({
      ...basics,
      'games 1': `${head}\n${first}\n`,
      'games 2': `${head}\n${second}\n${first}\n`,
    });
    expect(plan.faults.map(({ file, line, message }) => ({ file, line, message }))).toEqual([
      { file: 'games 2.csv', line: 3, message: 'This game stands in line 2 of games 1.csv already.' },
    ]);
  });

  test('decimal commas are read where semicolons separate the columns, and refused where commas do', () => {
    const venue = (text: string) => planned({ venues: text });
    expect(venue('code;name;lat;lon\nX;X Hall;56,25;8,5\n').kinds[0]?.added[0]?.record).toMatchObject({
      lat: 56.25,
      lon: 8.5,
    });
    const [fault] = venue('code,name,lat,lon\nX,X Hall,"56,25",8.5\n').faults;
    expect(fault).toMatchObject({ column: 'lat', value: '56,25', remedy: 'write a decimal point' });
  });
});

describe('games that a whole list does not name', () => {
  const whole = games.replace(/G2.*\n/, '');

  test('stay without the option', () => {
    expect(isEmptyPlan(planned({ games: whole }, established()))).toBe(true);
  });

  test('are cancelled, never deleted, on the days that the list covers', () => {
    expect(isEmptyPlan(planned({ games: whole }, established(), { whole: true }))).toBe(true);
    const range = { fromDate: '2026-09-05', toDate: '2026-09-06' };
    const plan = planned({ games: whole }, established(), { whole: true, range });
    expect(plan.kinds[0]?.removed).toEqual([
      {
        key: 'G2',
        before: expect.objectContaining({ status: 'TENTATIVE' }) as unknown,
        after: expect.objectContaining({ status: 'CANCELLED' }) as unknown,
      },
    ]);
    expect(isEmptyPlan(planned({ games: whole }, after(plan, established()), { whole: true, range }))).toBe(
      true,
    );
  });

  test('are left alone while the list has a fault', () => {
    const range = { fromDate: '2026-09-05', toDate: '2026-09-06' };
    const plan = planned({ games: `${whole}G3,D1,NORTH,A,never,14:00,HER,TER,,\n` }, established(), {
      whole: true,
      range,
    });
    expect(plan.faults).toHaveLength(1);
    expect(plan.kinds[0]?.removed).toEqual([]);
  });
});

test('people and teams that a whole list does not name are no longer active', () => {
  const plan = planned(
    { officials: basics.officials.replace(/1002.*\n/, ''), teams: 'code,name,division\nHER,Herons,D1\n' },
    established(),
    { whole: true },
  );
  expect(
    plan.kinds.flatMap(({ removed }) => removed.map(({ key, after: left }) => [key, left?.['active']])),
  ).toEqual([
    ['1002', false],
    ['TER', false],
    ['GUL', false],
  ]);
});

describe('local times at a clock change', () => {
  const game = (date: string, time: string, offset = '') =>
    planned(
      {
        games: `number,division,venue,date,time,utc_offset,home,away\nG9,D1,NORTH,${date},${time},${offset},HER,TER\n`,
      },
      established(),
    );

  test('a time that the clocks skip is refused', () => {
    expect(game('2026-03-29', '02:30').faults).toEqual([
      expect.objectContaining({
        column: 'time',
        value: '02:30',
        message: 'The clocks in Europe/Copenhagen skip 02:30 on 2026-03-29.',
        remedy: 'choose another time, such as 03:00',
      }),
    ]);
  });

  test('a time that the clocks show twice is asked for, and the offset decides', () => {
    expect(game('2026-10-25', '02:30').faults).toEqual([
      expect.objectContaining({
        column: 'utc_offset',
        remedy: 'say which is meant: utc_offset +02:00 (the first) or +01:00 (the second)',
      }),
    ]);
    expect(game('2026-10-25', '02:30', '+01:00').kinds[0]?.added[0]?.record).toMatchObject({ utcOffset: 60 });
    expect(game('2026-10-25', '02:30', '+05:00').faults).toHaveLength(1);
  });

  test('an offset that contradicts an ordinary time is refused, the right one is not kept', () => {
    expect(game('2026-09-05', '14:00', '+01:00').faults[0]?.message).toContain('is +02:00');
    expect(game('2026-09-05', '14:00', '+02:00').kinds[0]?.added[0]?.record).toMatchObject({
      utcOffset: null,
    });
  });
});

describe('availability', () => {
  const head = 'official,kind,date,from,to,repeat,until,except\n';
  const rule = (line: string, entries = established()) =>
    planned({ availability: `${head}${line}\n` }, entries);

  test('plain words and ends become RFC 5545 rules, and are recognised again', () => {
    const line = '1001,available,2026-09-05,09:00,00:00,weekly,2026-12-19,2026-10-10|2026-09-19';
    const plan = rule(line);
    expect(plan.faults).toEqual([]);
    expect(plan.kinds[0]?.added[0]?.record).toMatchObject({
      to: '24:00',
      repeat: 'FREQ=WEEKLY;UNTIL=20261219T225900Z',
      except: ['2026-09-19', '2026-10-10'],
    });
    expect(isEmptyPlan(rule(line, after(plan, established())))).toBe(true);
    expect(isEmptyPlan(rule(line.replace('00:00,weekly', '24:00,weekly'), after(plan, established())))).toBe(
      true,
    );
  });

  test('a whole list withdraws only rules of the people it names', () => {
    const entries = after(
      rule(
        '1001,busy,2026-09-05,09:00,12:00,,,\n1001,busy,2026-09-06,09:00,12:00,,,\n1002,busy,2026-09-06,09:00,12:00,,,',
      ),
      established(),
    );
    const plan = planned({ availability: `${head}1001,busy,2026-09-05,09:00,12:00,,,\n` }, entries, {
      whole: true,
    });
    expect(plan.kinds[0]?.removed.map(({ key, after: left }) => [key, left])).toEqual([
      ['1001 busy 2026-09-06 09:00-12:00', null],
    ]);
  });
});

test('what cannot be played is noticed, and can be stored all the same', () => {
  const plan = planned({
    ...basics,
    games: `${games}G3,D1,NORTH,A,2026-09-05,15:00,GUL,HER,,\nG4,D1,NORTH,A,2026-09-05,15:40,GUL,TER,CANCELLED,\n`,
  });
  expect(plan.faults).toEqual([]);
  expect(plan.notices.map(({ line, message }) => `${line} ${message}`)).toEqual([
    '2 Venue NORTH, court A has game G3 at 2026-09-05 15:00 too.',
    '2 Team HER has game G3 at 2026-09-05 15:00 too.',
    '4 Venue NORTH, court A has game G1 at 2026-09-05 14:00 too.',
    '4 Team HER has game G1 at 2026-09-05 14:00 too.',
  ]);
});
