// Goal: the demo loads on any day through the importers, whole, once, and is what a season looks like to the other rooms.
// Method: real databases, one for each day.
import { loadDemo, type DemoOutcome } from '../../../src/demo/load-demo';
import { FixedClock } from '../../../src/platform/clock';
import { testDatabase, type TestDatabase } from '../../support/database/test-database';

const count = async (database: TestDatabase, sql: string): Promise<unknown> =>
  (await database.owner.query<{ n: unknown }>(`select ${sql} as n`)).rows[0]?.n;

describe.each([
  ['a Wednesday in winter', '2026-11-25'],
  ['the Saturday before clocks go forward', '2027-03-27'],
  ['the Sunday on which clocks go back', '2026-10-25'],
  ['the turn of the year', '2026-12-31'],
])('%s', (_, today) => {
  let database: TestDatabase;
  let outcome: DemoOutcome;
  const steps: string[] = [];
  const clock = new FixedClock('2026-06-01T12:00:00Z');

  beforeAll(async () => {
    database = await testDatabase();
    outcome = await loadDemo({ ...database, clock }, { today, onProgress: (step) => steps.push(step) });
  }, 120_000);
  afterAll(() => database.close());

  test('it is loaded with everything', async () => {
    expect(outcome).toMatchObject({
      kind: 'loaded',
      assignorEmail: 'assignor@marram-coast.example',
      objects: { officials: 60, venues: 14, divisions: 8, teams: 40, games: 516, crews: 427 },
    });
    expect(steps).toHaveLength(4);
    expect(await count(database, `(select count(*)::int from membership)`)).toBe(63);
    expect(await count(database, `(select count(*)::int from slate)`)).toBe(12);
    expect(await count(database, `(select count(*)::int from slate_game)`)).toBe(515);
    expect(await count(database, `(select count(*)::int from seat)`)).toBe(2 * 515);
    expect(await count(database, `(select count(*)::int from seat where official_id is not null)`)).toBe(
      2 * 427,
    );
  });

  test('what is past is published and accepted, what is to come is open', async () => {
    const rows = await database.owner.query<{
      past: boolean;
      games: number;
      told: number;
      published: number;
    }>(
      `select s.to_date < $1::date as past, count(distinct sg.game_id)::int as games, count(a.id)::int as told,
              count(distinct p.id)::int as published
         from slate s join slate_game sg on sg.slate_id = s.id
         left join assignment a on a.game_id = sg.game_id and a.reply = 'ACCEPTED'
           and a.publication_id in (select id from publication where slate_id = s.id)
           and a.replied_at < a.starts_at
         left join publication p on p.slate_id = s.id
        group by 1 order by 1`,
      [today],
    );
    expect(rows.rows).toEqual([
      { past: false, games: 88, told: 0, published: 0 },
      { past: true, games: 427, told: 854, published: 10 },
    ]);
  });

  test('a second time changes nothing', async () => {
    const before = await count(database, `(select count(*)::int from audit_entry)`);
    const again = await loadDemo({ ...database, clock }, { today: '2027-06-01' });
    expect(again).toEqual({ kind: 'present', associationId: outcome.associationId });
    expect(await count(database, `(select count(*)::int from audit_entry)`)).toBe(before);
    expect(await count(database, `(select count(*)::int from association)`)).toBe(1);
  });
});
