// Goal: each way in which a line can be wrong is told with file, line, column, value and what to try. Method: one bad line in an
// otherwise good association.
import { after, basics, planned } from './imported';

const established = after(planned(basics));
const heads = {
  levels: 'level,name',
  venues: 'code,name,lat,lon,time_zone,courts',
  officials:
    'number,given_name,family_name,level,may_be_chief,birth_date,lat,lon,max_games_per_day,email,languages',
  divisions:
    'code,name,chief_min_level,umpire_min_level,chief_target_level,umpire_target_level,pairing_cost,game_minutes,chief_fee,clock',
  teams: 'code,name,division',
  games: 'number,division,venue,court,date,time,home,away,status,duration_minutes',
  conflicts: 'official,team,venue,other_official,since,until',
  availability: 'official,kind,date,from,to,repeat,until,except,priority',
  'travel-legs': 'from,to,minutes,metres',
};

const cases: [
  kind: keyof typeof heads,
  line: string,
  column: string | null,
  message: string,
  remedy: string,
][] = [
  ['levels', '100,Too high', 'level', 'whole number from 0 to 99', 'write a whole number'],
  ['levels', '7,Reed', 'name', 'Level 3 has this name too', 'name of its own'],
  ['levels', '8,', 'name', 'It is empty', 'write text'],
  ['venues', 'X,X Hall,91,8,,', 'lat', 'not a number from -90 to 90', 'write a number'],
  ['venues', 'X,X Hall,56,,,', 'lon', 'Only one of lat and lon', 'both, or neither'],
  [
    'venues',
    'X,X Hall,,,Europe/Copenhagn,',
    'time_zone',
    'no time zone',
    'did you mean "Europe/Copenhagen"?',
  ],
  ['venues', 'X,X Hall,,,,A|A', 'courts', '"A" is there twice', 'state it once'],
  ['venues', 'X|Y,X Hall,,,,', 'code', '"|"', 'plain name'],
  ['venues', '"X\nY",X Hall,,,,', 'code', 'line break', 'plain name'],
  [
    'officials',
    '1003,Di,Moe,9,yes,,,,,,',
    'level',
    'There is no level "9"',
    'use one of 1 Sprout, 2 Stem, 3 Reed',
  ],
  ['officials', '1003,Di,Moe,Stemm,yes,,,,,,', 'level', 'There is no level "Stemm"', '2 Stem'],
  ['officials', '1003,Di,Moe,2,perhaps,,,,,,', 'may_be_chief', 'none of the words', 'write yes or no'],
  [
    'officials',
    '1003,Di,Moe,2,no,31.02.2001,,,,,',
    'birth_date',
    'no date that exists',
    '2026-11-07 or 07.11.2026 (dd.MM.yyyy)',
  ],
  ['officials', '1003,Di,Moe,2,no,02/03/2001,,,,,', 'birth_date', 'no date that exists', 'dd.MM.yyyy'],
  ['officials', '1003,Di,Moe,2,no,2026-06-02,,,,,', 'birth_date', 'in the future', 'correct'],
  ['officials', '1003,Di,Moe,2,no,,,,11,,', 'max_games_per_day', 'from 0 to 10', 'write a whole number'],
  [
    'officials',
    '1003,Di,Moe,2,no,,,,9,,',
    'max_games_per_day',
    'more than the 3 games of a whole slate',
    'raise',
  ],
  ['officials', '1003,Di,Moe,2,no,,,,,di(at)moe,', 'email', 'no e-mail address', 'ana@example.org'],
  ['officials', '1003,Di,Moe,2,no,,,,,,d|1', 'languages', '"d": It is no language tag', 'write en'],
  ['divisions', 'D2,Second,2,1,3,2,6|-1,100,,', 'pairing_cost', '"-1"', 'write a number'],
  ['divisions', 'D2,Second,2,1,3,2,|,100,,', 'pairing_cost', 'states no cost', '6|2|0|3'],
  ['divisions', 'D2,Second,3,1,2,2,6,100,,', 'chief_target_level', 'below the lowest level, 3', 'raise it'],
  ['divisions', 'D2,Second,2,1,3,2,6,0,,', 'game_minutes', 'from 1 to 600', 'write a whole number'],
  ['divisions', 'D2,Second,2,1,3,2,6,100,35.505,', 'chief_fee', 'EUR has 2 decimals', 'round it'],
  ['divisions', 'D2,Second,2,1,3,2,6,100,,slow', 'clock', 'none of the words', 'stopped or running'],
  ['teams', 'EID,Eiders,D9', 'division', 'There is no division "D9"', 'did you mean "D1"?'],
  ['games', 'G1,D1,NORHT,,2026-09-05,14:00,HER,TER,,', 'venue', 'no venue "NORHT"', 'did you mean "NORTH"?'],
  [
    'games',
    'G1,D1,ZZZZZZ,,2026-09-05,14:00,HER,TER,,',
    'venue',
    'no venue',
    'add it to the list of venues first',
  ],
  ['games', 'G1,D1,NORTH,C,2026-09-05,14:00,HER,TER,,', 'court', 'has no court "C"', 'it has A, B'],
  ['games', 'G1,D1,NORTH,,5.9.26,14:00,HER,TER,,', 'date', 'no date that exists', 'dd.MM.yyyy'],
  ['games', 'G1,D1,NORTH,,2026-09-05,2 pm,HER,TER,,', 'time', 'no time of day', 'as 18:30'],
  ['games', 'G1,D1,NORTH,,2026-09-05,24:00,HER,TER,,', 'time', 'no time of day', 'to 23:59'],
  ['games', 'G1,D1,NORTH,,2026-09-05,14:00,HER,HER,,', 'away', 'cannot play itself', 'correct'],
  [
    'games',
    'G1,D1,NORTH,,2026-09-05,14:00,HER,TER,OFF,',
    'status',
    'none of the words',
    'TENTATIVE, CONFIRMED or CANCELLED',
  ],
  ['conflicts', '1001,HER,NORTH,,,', 'venue', 'names 2 of team, venue', 'exactly one'],
  ['conflicts', '1001,,,,,', null, 'names 0 of team, venue', 'exactly one'],
  ['conflicts', '1001,,,1001,,', 'other_official', 'in conflict with themselves', 'correct'],
  ['conflicts', '1001,HER,,,2026-02-01,2026-01-01', 'until', 'before 2026-02-01', 'exchange'],
  [
    'availability',
    '1001,free,2026-09-05,09:00,12:00,,,,',
    'kind',
    'none of the words',
    'available, busy or reluctant',
  ],
  ['availability', '1001,busy,2026-09-05,09:00,25:00,,,,', 'to', 'no time of day', 'to 24:00'],
  [
    'availability',
    '1001,busy,2026-09-05,09:00,12:00,HOURLY,,,',
    'repeat',
    'no rule that is followed',
    'write weekly',
  ],
  [
    'availability',
    '1001,busy,2026-09-05,09:00,12:00,FREQ=MINUTELY,,,',
    'repeat',
    'FREQ must be',
    'write weekly',
  ],
  [
    'availability',
    '1001,busy,2026-09-05,09:00,12:00,FREQ=WEEKLY;BYDAY=SU,,,',
    'repeat',
    'not one of its days',
    'weekly',
  ],
  [
    'availability',
    '1001,busy,2026-09-05,09:00,12:00,,2026-10-01,,',
    'until',
    'for a repetition only',
    'column repeat',
  ],
  [
    'availability',
    '1001,busy,2026-09-05,09:00,12:00,weekly,2026-09-01,,',
    'until',
    'before 2026-09-05',
    'correct',
  ],
  [
    'availability',
    '1001,busy,2026-09-05,09:00,12:00,FREQ=WEEKLY;COUNT=3,2026-10-01,,',
    'until',
    'states its end too',
    'keep one',
  ],
  ['availability', '1001,busy,2027-03-28,02:30,12:00,,,,', 'from', 'clocks skip 02:30', 'exists'],
  [
    'availability',
    '1001,busy,2026-09-05,09:00,12:00,,,,12',
    'priority',
    'from 0 to 9',
    'write a whole number',
  ],
  ['travel-legs', 'NORTH,BARN,10,9000', 'to', 'The venue "BARN" has no position', 'add lat and lon'],
  ['travel-legs', 'NORTH,1001,10,9000', 'to', 'no venue "1001"', 'did you mean "home:1001"?'],
  ['travel-legs', 'NORTH,NORTH,10,9000', 'to', 'ends where it begins', 'remove the line'],
  ['travel-legs', 'NORTH,SOUTH,1.5,9000', 'minutes', 'whole number', 'write a whole number'],
];

test.each(cases)('%s: %s', (kind, line, column, message, remedy) => {
  const plan = planned({ [kind]: `${heads[kind]}\n${line}\n` }, established);
  expect(plan.faults).toHaveLength(1);
  expect(plan.faults[0]).toMatchObject({
    file: `${kind}.csv`,
    line: 2,
    column,
    message: expect.stringContaining(message) as unknown,
    remedy: expect.stringContaining(remedy) as unknown,
  });
});

test('all faults of all lines at once, and none that only follows from another', () => {
  const plan = planned({
    ...basics,
    venues: basics.venues.replace('56.1', 'north'),
    officials: basics.officials.replace('1980-01-02', '1980-13-02').replace('2010', '20I0'),
    games: `${heads.games}\nG1,D1,NORTH,A,2026-09-05,14:00,HER,TER,,\nG2,D1,SOUTH,A,2026-09-05,9am,HER,XXX,,\n`,
    conflicts: `${heads.conflicts}\n1001,HER,,,,\n`,
  });
  expect(plan.faults.map(({ file, line, column }) => `${file}:${line}:${column}`)).toEqual([
    'venues.csv:2:lat',
    'officials.csv:2:birth_date',
    'officials.csv:3:birth_date',
    'games.csv:3:time',
    'games.csv:3:away',
  ]);
});

test('a file that cannot be read does not make every reference to it a fault', () => {
  const plan = planned({
    ...basics,
    venues: 'kode,name\nNORTH,North Hall\n',
    games: `${heads.games}\nG1,D1,NORTH,,2026-09-05,14:00,HER,TER,,\n`,
  });
  expect(plan.faults.map(({ file, message }) => `${file} ${message}`)).toEqual([
    'venues.csv Nobody knows this column.',
    'venues.csv The column code is missing.',
  ]);
});

test('a court on which games are played cannot be left out', () => {
  const withGame = after(
    planned({ games: `${heads.games}\nG1,D1,NORTH,B,2026-09-05,14:00,HER,TER,,\n` }, established),
    established,
  );
  const without = (courts: string) =>
    planned({ venues: `code,name,courts\nNORTH,North Hall,${courts}\n` }, withGame);
  expect(without('A').faults[0]?.message).toBe('Court "B" is missing, but games are played on it.');
  expect(without('B').faults).toEqual([]);
});

test('an unknown kind of list', () => {
  expect(planned({ referees: 'a\n1\n' }).faults[0]).toMatchObject({
    value: 'referees',
    remedy: expect.stringContaining('officials') as unknown,
  });
});

test('a minor without a guardian, an address used twice and a moved home with measured ways are noticed', () => {
  const legs = after(
    planned({ 'travel-legs': `${heads['travel-legs']}\nhome:1001,NORTH,12,9000\n` }, established),
    established,
  );
  const plan = planned(
    {
      officials: [
        heads.officials,
        '1001,Ada,Holm,3,yes,1980-01-02,56.5,8.21,,one@x.example,',
        '1003,Di,Moe,1,no,2011-01-01,,,,One@x.example,',
      ].join('\n'),
    },
    legs,
  );
  expect(plan.faults).toEqual([]);
  expect(plan.notices.map(({ line, column }) => `${line} ${column}`)).toEqual([
    '2 lat',
    '3 guardian_name',
    '3 email',
  ]);
});
