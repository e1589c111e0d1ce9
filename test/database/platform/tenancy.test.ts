// Goal: nobody sees or changes another association's rows through Tenancy, and nothing of one call leaks into the next.
// Method: a small table under the same policy as ours, tried from the application role with two associations.
import { randomUUID } from 'node:crypto';
import { createDataSource } from '../../../src/platform/database';
import { Tenancy } from '../../../src/platform/tenancy';
import { testDatabase, type TestDatabase } from '../../support/database/test-database';

const [marram, dunes] = [randomUUID(), randomUUID()];
let database: TestDatabase;
let tenancy: Tenancy;

beforeAll(async () => {
  database = await testDatabase();
  tenancy = database.tenancy;
  const mine = `association_id = nullif(current_setting('crewloom.association_id', true), '')::uuid`;
  await database.owner.query(`
    create table shell (association_id uuid not null, name text not null, weight int not null default 0);
    alter table shell enable row level security;
    alter table shell force row level security;
    create policy own_association on shell using (${mine}) with check (${mine});
    grant select, insert, update, delete on shell to crewloom_app;
  `);
  await tenancy.run(marram, (tx) =>
    tx.query('insert into shell values ($1, $2), ($1, $3)', [marram, 'cockle', 'whelk']),
  );
  await tenancy.run(dunes, (tx) => tx.query('insert into shell values ($1, $2)', [dunes, 'limpet']));
});
afterAll(() => database.close());

const namesOf = (associationId: string) =>
  tenancy.read(associationId, async (tx) => {
    const rows = await tx.query<{ name: string }[]>('select name from shell order by name');
    return rows.map(({ name }) => name);
  });

test('each association sees its own rows, and without an association there are none', async () => {
  expect(await namesOf(marram)).toEqual(['cockle', 'whelk']);
  expect(await namesOf(dunes)).toEqual(['limpet']);
  expect(await database.dataSource.query('select * from shell')).toEqual([]);
});

test('a row of another association can be neither written, moved, changed nor deleted', async () => {
  const refused = /row-level security/;
  await expect(
    tenancy.run(dunes, (tx) => tx.query('insert into shell values ($1, $2)', [marram, 'oyster'])),
  ).rejects.toThrow(refused);
  await expect(
    tenancy.run(dunes, (tx) => tx.query('update shell set association_id = $1', [marram])),
  ).rejects.toThrow(refused);
  await tenancy.run(dunes, (tx) => tx.query(`update shell set weight = 9 where name = 'whelk'`));
  await tenancy.run(dunes, (tx) => tx.query(`delete from shell where association_id = $1`, [marram]));
  const { rows } = await database.owner.query('select name, weight from shell where association_id = $1', [
    marram,
  ]);
  expect(rows).toEqual(
    expect.arrayContaining([
      { name: 'cockle', weight: 0 },
      { name: 'whelk', weight: 0 },
    ]),
  );
});

test('the application role cannot switch row-level security off', async () => {
  await tenancy.run(dunes, async (tx) => {
    const [role] = await tx.query<{ rolsuper: boolean; rolbypassrls: boolean }[]>(
      'select rolsuper, rolbypassrls from pg_roles where rolname = current_user',
    );
    expect(role).toEqual({ rolsuper: false, rolbypassrls: false });
  });
  await expect(
    tenancy.run(dunes, async (tx) => {
      await tx.query('set local row_security = off');
      return tx.query<unknown[]>('select * from shell');
    }),
  ).rejects.toThrow(/row-level security/);
});

test('the setting ends with the transaction, also when the work throws, on one shared connection', async () => {
  const single = await createDataSource({ url: database.appUrl, entities: [], poolSize: 1 }).initialize();
  try {
    const narrow = new Tenancy(single);
    const count = async () =>
      (await single.query<{ n: number }[]>('select count(*)::int as n from shell'))[0]?.n;
    await narrow.run(marram, (tx) => tx.query('select 1'));
    expect(await count()).toBe(0);
    await expect(
      narrow.run(marram, async () => {
        throw new Error('half-way');
      }),
    ).rejects.toThrow('half-way');
    expect(await count()).toBe(0);
  } finally {
    await single.destroy();
  }
});

test('many calls side by side keep to their own association', async () => {
  const answers = await Promise.all(
    Array.from({ length: 60 }, async (_, n) => ({
      n,
      names: await namesOf(n % 2 === 0 ? marram : dunes),
    })),
  );
  for (const { n, names } of answers) expect(names).toEqual(n % 2 === 0 ? ['cockle', 'whelk'] : ['limpet']);
});

test('reading refuses to write and sees one moment', async () => {
  await expect(
    tenancy.read(marram, (tx) => tx.query('insert into shell values ($1, $2)', [marram, 'oyster'])),
  ).rejects.toThrow(/read-only transaction/);
  await tenancy.read(marram, async (tx) => {
    const before = await tx.query<unknown[]>('select sum(weight) from shell');
    await database.owner.query('update shell set weight = weight + 1 where association_id = $1', [marram]);
    expect(await tx.query('select sum(weight) from shell')).toEqual(before);
  });
});

test('a malformed setting never reaches the database, and is not repeated', async () => {
  await expect(tenancy.run(`' or true --`, async () => 1)).rejects.toThrow('associationId is malformed.');
  await expect(tenancy.runWith({ feedTokenHash: 'secret' }, async () => 1)).rejects.toThrow(/^feedTokenHash/);
});

test('runWith states what is known before the association is', async () => {
  const hash = 'ab'.repeat(32);
  const accountId = randomUUID();
  const seen = await tenancy.runWith(
    { accountId, sessionTokenHash: hash, accountEmail: 'pat@marram.example' },
    (tx) =>
      tx.query<
        unknown[]
      >(`select current_setting('crewloom.account_id') as a, current_setting('crewloom.session_hash') as s,
                       current_setting('crewloom.account_email') as e`),
  );
  expect(seen).toEqual([{ a: accountId, s: hash, e: 'pat@marram.example' }]);
});

test('work that loses a deadlock is run again only when it may be repeated', async () => {
  const lockInOrder = (first: string, second: string, repeatable: boolean) => {
    let attempts = 0;
    const done = tenancy.run(
      marram,
      async (tx) => {
        attempts += 1;
        await tx.query('update shell set weight = weight + 1 where name = $1', [first]);
        await tx.query('select pg_sleep(0.15)');
        await tx.query('update shell set weight = weight + 1 where name = $1', [second]);
      },
      { repeatable },
    );
    return done.then(
      () => ({ ok: true, attempts }),
      (error: Error) => ({ ok: false, attempts, message: error.message }),
    );
  };
  const repeated = await Promise.all([
    lockInOrder('cockle', 'whelk', true),
    lockInOrder('whelk', 'cockle', true),
  ]);
  expect(repeated.every(({ ok }) => ok)).toBe(true);
  expect(repeated.reduce((sum, { attempts }) => sum + attempts, 0)).toBeGreaterThan(2);

  const once = await Promise.all([
    lockInOrder('cockle', 'whelk', false),
    lockInOrder('whelk', 'cockle', false),
  ]);
  expect(once.filter(({ ok }) => !ok)).toEqual([
    { ok: false, attempts: 1, message: expect.stringMatching(/deadlock/) as string },
  ]);
}, 20_000);
