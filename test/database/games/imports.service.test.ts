// Goal: a plan is stored whole or not at all, a dry run stores nothing, the same files again change nothing, and what is read
// back from the database is what the files said. Method: the service on a real database.
import { randomUUID } from 'node:crypto';
import { FixedClock } from '../../../src/platform/clock';
import { isEmptyPlan, type ImportFile } from '../../../src/games/imports/import-plan';
import { ImportsService } from '../../../src/games/imports/imports.service';
import { AvailabilityRule } from '../../../src/roster/availability-rule.entity';
import { testDatabase, type TestDatabase } from '../../support/database/test-database';
import { basics } from '../../unit/games/imported';
import { anAssociation } from './an-association';

let database: TestDatabase;
let imports: ImportsService;
const clock = new FixedClock('2026-06-01T10:00:00Z');
const accountId = randomUUID();

beforeAll(async () => {
  database = await testDatabase();
  imports = new ImportsService(database.tenancy, clock);
}, 60_000);
afterAll(() => database.close());

const files = (texts: Readonly<Record<string, string>>): ImportFile[] =>
  Object.entries(texts).map(([kind, text]) => ({
    kind,
    name: `${kind}.csv`,
    bytes: new TextEncoder().encode(text),
  }));

const full = {
  ...basics,
  games: [
    'number,division,venue,court,date,time,utc_offset,home,away,note',
    'G1,D1,NORTH,A,2026-09-05,14:00,,HER,TER,',
    'G2,D1,SOUTH,,2026-10-25,02:30,+01:00,TER,GUL,"late, late"',
    '',
  ].join('\n'),
  conflicts:
    'official,team,other_official,since,reason\n1001,HER,,2026-01-01,played there\n1001,,1002,,family\n',
  availability: [
    'official,kind,date,from,to,repeat,until,except,priority',
    '1001,available,2026-09-05,09:00,24:00,weekly,2026-12-19,2026-10-10|2026-09-19,',
    '1001,busy,2026-09-05,22:00,02:00,,,,3',
    '',
  ].join('\n'),
  'travel-legs':
    'from,to,minutes,metres,measured_by\nhome:1001,NORTH,12,9000,driven\nNORTH,SOUTH,20,17000,driven\n',
};

async function counts(associationId: string): Promise<Record<string, number>> {
  const tables = [
    'venue',
    'court',
    'place',
    'official',
    'division',
    'team',
    'game',
    'conflict',
    'travel_leg',
  ];
  const result: Record<string, number> = {};
  for (const table of [...tables, 'availability_rule', 'audit_entry', 'level_step']) {
    const { rows } = await database.owner.query<{ n: number }>(
      `select count(*)::int as n from ${table} where association_id = $1`,
      [associationId],
    );
    result[table] = rows[0]?.n ?? -1;
  }
  return result;
}

test('a dry run stores nothing, a refused import stores nothing', async () => {
  const associationId = await anAssociation(database);
  const plan = await imports.plan(associationId, files(full));
  expect(plan.faults).toEqual([]);
  const bad = { ...full, games: full.games.replace('GUL', 'GLU') };
  const { outcome, plan: refused } = await imports.apply(associationId, files(bad));
  expect(outcome).toBe('refused');
  expect(refused.faults).toHaveLength(1);
  expect(Object.values(await counts(associationId)).every((count) => count === 0)).toBe(true);
});

test('everything is stored, read back as stated, and the same files again change nothing', async () => {
  const associationId = await anAssociation(database);
  expect((await imports.apply(associationId, files(full), { accountId })).outcome).toBe('stored');
  const stored = await counts(associationId);
  expect(stored).toEqual({
    venue: 3,
    court: 3,
    place: 4,
    official: 2,
    division: 1,
    team: 3,
    game: 2,
    conflict: 2,
    travel_leg: 2,
    availability_rule: 2,
    level_step: 3,
    audit_entry: 3 + 3 + 2 + 1 + 3 + 2 + 2 + 2 + 2,
  });
  const again = await imports.apply(associationId, files(full));
  expect(isEmptyPlan(again.plan)).toBe(true);
  expect(await counts(associationId)).toEqual(stored);
  const { rows } = await database.owner.query<{ starts_at: Date; version: number }>(
    'select starts_at, version from game where association_id = $1 order by number',
    [associationId],
  );
  expect(rows.map(({ starts_at, version }) => [starts_at.toISOString(), version])).toEqual([
    ['2026-09-05T12:00:00.000Z', 1],
    ['2026-10-25T01:30:00.000Z', 1],
  ]);
});

test('the entity of a rule gives its excepted days as days', async () => {
  const associationId = await anAssociation(database);
  await imports.apply(associationId, files(full));
  const rules = await database.tenancy.read(associationId, (tx) => tx.find(AvailabilityRule));
  expect(rules.find(({ kind }) => kind === 'available')).toMatchObject({
    localDate: '2026-09-05',
    localTime: '09:00:00',
    durationMinutes: 900,
    recurrence: 'FREQ=WEEKLY;UNTIL=20261219T225900Z',
    exceptDates: ['2026-09-19', '2026-10-10'],
    source: 'import',
  });
});

test('a moved game gets a new version and instant, and the trail says what changed and by whom', async () => {
  const associationId = await anAssociation(database);
  await imports.apply(associationId, files(full));
  clock.advanceMinutes(60);
  const moved = full.games.replace('NORTH,A,2026-09-05,14:00', 'SOUTH,A,2026-09-06,16:15');
  const { outcome } = await imports.apply(associationId, files({ games: moved }), { accountId });
  expect(outcome).toBe('stored');
  const { rows } = await database.owner.query<Record<string, unknown>>(
    `select g.version, g.starts_at, g.updated_at, v.code, c.name from game g
       join venue v on v.id = g.venue_id join court c on c.id = g.court_id
      where g.association_id = $1 and g.number = 'G1'`,
    [associationId],
  );
  expect(rows).toEqual([
    {
      version: 2,
      starts_at: new Date('2026-09-06T14:15:00Z'),
      updated_at: clock.now(),
      code: 'SOUTH',
      name: 'A',
    },
  ]);
  const trail = await database.owner.query<Record<string, unknown>>(
    `select action, object_kind, object_id, account_id, before, after from audit_entry
      where association_id = $1 and action = 'import.games' and before is not null`,
    [associationId],
  );
  expect(trail.rows).toEqual([
    {
      action: 'import.games',
      object_kind: 'game',
      object_id: 'G1',
      account_id: accountId,
      before: { venue: 'NORTH', date: '2026-09-05', time: '14:00' },
      after: { venue: 'SOUTH', date: '2026-09-06', time: '16:15' },
    },
  ]);
});

test('every kind of change is stored: a second plan of the changed files is empty', async () => {
  const associationId = await anAssociation(database);
  await imports.apply(associationId, files(full));
  const changed = {
    levels: full.levels.replace('Stem', 'Stalk'),
    venues: full.venues.replace('56.1,8.2,A|B', '56.2,8.2,A|C').replace('The Barn,,', 'The Barn,55.9,8.4'),
    officials: full.officials.replace('56.12', '56.13').replace('1002,Bo', '1002,Bodil'),
    divisions: full.divisions.replace('6|0|1,100,1.5', '5|1,110,2'),
    teams: full.teams.replace('Gulls,D1', 'Kittiwakes,'),
    games: full.games.replace('+01:00', '+02:00'),
    conflicts: full.conflicts.replace('played there', 'coached there'),
    availability: full.availability.replace('|2026-09-19,', ',5'),
    'travel-legs': full['travel-legs'].replace('12,9000', '14,9500'),
  };
  const { outcome, plan } = await imports.apply(associationId, files(changed));
  expect(plan.faults).toEqual([]);
  expect(outcome).toBe('stored');
  expect(plan.kinds.filter(({ changed: list }) => list.length === 0)).toEqual([]);
  expect(isEmptyPlan(await imports.plan(associationId, files(changed)))).toBe(true);
});

test('a whole list cancels, retires and deletes what nothing refers to', async () => {
  const associationId = await anAssociation(database);
  await imports.apply(associationId, files(full));
  const shorter = {
    officials: full.officials.replace(/1002.*\n/, ''),
    games: full.games.replace(/G2.*\n/, ''),
    conflicts: full.conflicts.replace(/1001,,1002.*\n/, ''),
    availability: full.availability.replace(/1001,busy.*\n/, ''),
    'travel-legs': full['travel-legs'].replace(/NORTH,SOUTH.*\n/, ''),
  };
  const whole = { whole: true, range: { fromDate: '2026-09-01', toDate: '2026-12-31' } };
  const { outcome } = await imports.apply(associationId, files(shorter), whole);
  expect(outcome).toBe('stored');
  const after = await counts(associationId);
  expect(after).toMatchObject({ official: 2, game: 2, conflict: 1, availability_rule: 1, travel_leg: 1 });
  const { rows } = await database.owner.query<{ status: string; active: boolean }>(
    `select g.status, o.active from game g, official o
      where g.association_id = $1 and o.association_id = $1 and g.number = 'G2' and o.number = '1002'`,
    [associationId],
  );
  expect(rows).toEqual([{ status: 'CANCELLED', active: false }]);
  expect(isEmptyPlan((await imports.apply(associationId, files(shorter), whole)).plan)).toBe(true);
});

test('two associations with the same codes never meet', async () => {
  const [one, other] = [await anAssociation(database), await anAssociation(database)];
  await imports.apply(one, files(full));
  const plan = await imports.plan(other, files({ games: full.games }));
  expect(plan.faults.length).toBeGreaterThan(0);
  await imports.apply(other, files(full));
  await imports.apply(one, files({ teams: 'code,name\nHER,Egrets\n' }));
  const { rows } = await database.owner.query<{ name: string }>(
    `select name from team where association_id = $1 and code = 'HER'`,
    [other],
  );
  expect(rows).toEqual([{ name: 'Herons' }]);
});

test('two imports of the same new list at once: one stores, the other finds it there', async () => {
  const associationId = await anAssociation(database);
  const [first, second] = await Promise.all([
    imports.apply(associationId, files(full)),
    imports.apply(associationId, files(full)),
  ]);
  expect([isEmptyPlan(first.plan), isEmptyPlan(second.plan)].sort()).toEqual([false, true]);
});
