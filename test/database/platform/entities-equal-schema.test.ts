import { entities } from '../../../src/entities';
import { testDatabase, type TestDatabase } from '../../support/database/test-database';

interface Column {
  readonly table_name: string;
  readonly column_name: string;
  readonly nullable: boolean;
}

// Goal: entities and migrations describe the same tables. Method: compare every column's name and whether it
// may be null, both ways, with PostgreSQL's own catalogue.
describe('entities', () => {
  let database: TestDatabase;
  beforeAll(async () => {
    database = await testDatabase();
  });
  afterAll(() => database.close());

  it('have the columns that the migrations made', async () => {
    const metadata = database.dataSource.entityMetadatas;
    expect(metadata.length).toBe(entities.length);
    const declared = metadata.flatMap(({ tableName, columns }) =>
      columns.map((column) => `${tableName}.${column.databaseName}${column.isNullable ? ' null' : ''}`),
    );
    const { rows } = await database.owner.query<Column>(
      `select table_name, column_name, is_nullable = 'YES' as nullable
       from information_schema.columns where table_schema = 'public' and table_name = any ($1)`,
      [metadata.map(({ tableName }) => tableName)],
    );
    const made = rows.map((row) => `${row.table_name}.${row.column_name}${row.nullable ? ' null' : ''}`);
    expect(declared.sort()).toEqual(made.sort());
  });

  it('cover every table behind an association', async () => {
    const { rows } = await database.owner.query<{ table_name: string }>(
      `select distinct table_name from information_schema.columns
       where table_schema = 'public' and column_name = 'association_id'`,
    );
    const known = new Set(database.dataSource.entityMetadatas.map(({ tableName }) => tableName));
    expect(rows.map((row) => row.table_name).filter((table) => !known.has(table))).toEqual([]);
  });
});

// Goal: the schema stays distributable by association. Source: the project's architecture decision that the
// association leads every key of a tenant's table.
describe('keys of tenant tables', () => {
  let database: TestDatabase;
  beforeAll(async () => {
    database = await testDatabase();
  });
  afterAll(() => database.close());

  it('begin with the association', async () => {
    const { rows } = await database.owner.query<{ name: string; first_column: string }>(
      `select c.conname as name, a.attname as first_column
       from pg_constraint c
       join pg_class t on t.oid = c.conrelid and t.relnamespace = 'public'::regnamespace
       join pg_attribute a on a.attrelid = c.conrelid and a.attnum = c.conkey[1]
       where c.contype in ('p', 'u', 'f', 'x')
         and exists (select 1 from pg_attribute x where x.attrelid = c.conrelid and x.attname = 'association_id')`,
    );
    expect(rows.length).toBeGreaterThan(50);
    const elsewhere = rows.filter(({ first_column }) => first_column !== 'association_id');
    // Accounts belong to no association.
    expect(elsewhere.map(({ name }) => name)).toEqual(['membership_account_id_fkey']);
  });

  it('stand behind forced row-level security', async () => {
    const { rows } = await database.owner.query<{ table_name: string }>(
      `select t.relname as table_name from pg_class t
       join pg_attribute a on a.attrelid = t.oid and a.attname = 'association_id'
       where t.relnamespace = 'public'::regnamespace and t.relkind = 'r'
         and not (t.relrowsecurity and t.relforcerowsecurity)`,
    );
    expect(rows).toEqual([]);
  });
});
