// Goal: what must never happen cannot be written, whatever the code does; and no association sees or touches another's slates.
// Method: raw SQL as the application role, against two associations in one database.
import { randomUUID } from 'node:crypto';
import { joinWorld, slateWorld, type SlateWorld } from './slate-world';

let home: SlateWorld;
let other: SlateWorld;
let officialId: string;
let gameId: string;
let laterId: string;
let slateId: string;
beforeAll(async () => {
  home = await slateWorld();
  other = await joinWorld(home.database, home.jobs);
  officialId = await home.addOfficial('Ada');
  await home.addOfficial('Bea');
  gameId = await home.addGame('G1');
  laterId = await home.addGame('G2', {
    venue_id: await home.addVenue('FAR'),
    starts_at: '2026-11-28T15:00:00Z',
  });
  slateId = await home.openSlate();
  await home.services.runBuild.run(
    { associationId: home.associationId, buildId: await buildOf(slateId) },
    new AbortController().signal,
  );
  await home.services.publishSlate.publish(home.actor, { slateId, idempotencyKey: 'k' });
});
afterAll(async () => {
  await home.jobs.stop({ timeoutMs: 1000 });
  await home.database.close();
});

async function buildOf(id: string): Promise<string> {
  const outcome = await home.services.requestBuild.request(home.actor, { slateId: id, seconds: 1 });
  if (outcome.kind !== 'requested') throw new Error(outcome.kind);
  return outcome.buildId;
}

const assign = (overrides: Record<string, unknown>) =>
  home.database.tenancy.run(home.associationId, async (tx) => {
    const row = {
      association_id: home.associationId,
      id: randomUUID(),
      uid: randomUUID(),
      game_id: gameId,
      seat: 'chief',
      official_id: officialId,
      venue_id: null,
      starts_at: '2026-12-05T14:00:00Z',
      ends_at: '2026-12-05T15:30:00Z',
      duty_starts_at: '2026-12-05T13:40:00Z',
      duty_ends_at: '2026-12-05T15:45:00Z',
      created_at: '2026-11-20T12:00:00Z',
      revised_at: '2026-11-20T12:00:00Z',
      ...overrides,
    };
    const venues = await tx.query<{ venue_id: string }[]>('select venue_id from game where id = $1', [
      row.game_id,
    ]);
    const names = Object.keys(row);
    await tx.query(
      `insert into assignment (${names.join(', ')}) values (${names.map((_, index) => `$${index + 1}`).join(', ')})`,
      Object.values({ ...row, venue_id: venues[0]?.venue_id }),
    );
  });

describe('the database refuses', () => {
  beforeEach(() => home.database.owner.query('delete from outbox_message; delete from assignment'));

  it('one official in two games at once', async () => {
    await assign({});
    await expect(assign({ game_id: laterId })).rejects.toThrow('assignment_one_');
  });

  it('one official in two buildings whose duties overlap', async () => {
    await assign({});
    const duty = {
      starts_at: '2026-12-05T15:40:00Z',
      ends_at: '2026-12-05T17:00:00Z',
      duty_starts_at: '2026-12-05T15:20:00Z',
      duty_ends_at: '2026-12-05T17:15:00Z',
    };
    await expect(assign({ game_id: laterId, ...duty })).rejects.toThrow('assignment_one_venue_at_once');
  });

  it('one official in both seats, and two officials in one seat', async () => {
    await assign({});
    await expect(assign({ seat: 'umpire' })).rejects.toThrow('assignment_one_');
    await expect(assign({ official_id: await home.addOfficial(`O${randomUUID()}`) })).rejects.toThrow(
      'assignment_one_a_seat',
    );
  });

  it('one person in both seats of the working copy', async () => {
    const place = (seat: string) =>
      home.database.tenancy.run(home.associationId, (tx) =>
        tx.query('update seat set official_id = $2 where game_id = $1 and seat = $3', [
          gameId,
          officialId,
          seat,
        ]),
      );
    await home.database.owner.query('update seat set official_id = null');
    await place('chief');
    await expect(place('umpire')).rejects.toThrow('seat_one_a_game');
  });

  it('a game in two slates', async () => {
    const second = await home.openSlate('Second');
    await expect(
      home.database.tenancy.run(home.associationId, (tx) =>
        tx.query('insert into slate_game (association_id, slate_id, game_id) values ($1, $2, $3)', [
          home.associationId,
          second,
          gameId,
        ]),
      ),
    ).rejects.toThrow('slate_game');
  });

  it('the same idempotency key twice', async () => {
    const insert = (number: number) =>
      home.database.tenancy.run(home.associationId, (tx) =>
        tx.query(
          `insert into publication (association_id, id, slate_id, number, idempotency_key, changes, published_at)
           values ($1, $2, $3, $4, 'same', '{}', now())`,
          [home.associationId, randomUUID(), slateId, number],
        ),
      );
    await insert(91);
    await expect(insert(92)).rejects.toThrow('idempotency_key');
  });
});

describe('another association', () => {
  const tables = ['slate', 'slate_game', 'seat', 'build', 'proposal', 'publication'];

  it.each(tables)('sees nothing of %s', async (table) => {
    expect(await home.count(`${table} where association_id = $1`, home.associationId)).toBeGreaterThan(0);
    const rows = await home.database.tenancy.read(other.associationId, (tx) =>
      tx.query<unknown[]>(`select 1 from ${table} where association_id = $1`, [home.associationId]),
    );
    expect(rows).toEqual([]);
  });

  it.each([...tables, 'assignment'])('changes and deletes nothing of %s', async (table) => {
    const before = await home.count(table);
    const [, changed] = await home.database.tenancy.run(other.associationId, (tx) =>
      tx.query<[unknown[], number]>(`update ${table} set association_id = association_id`),
    );
    const [, deleted] = await home.database.tenancy.run(other.associationId, (tx) =>
      tx.query<[unknown[], number]>(`delete from ${table}`),
    );
    expect([changed, deleted, await home.count(table)]).toEqual([0, 0, before]);
  });

  it('cannot write a slate into it', async () => {
    await expect(
      home.database.tenancy.run(other.associationId, (tx) =>
        tx.query(
          `insert into slate (association_id, id, name, from_date, to_date) values ($1, $2, 'X', '2026-01-01', '2026-01-02')`,
          [home.associationId, randomUUID()],
        ),
      ),
    ).rejects.toThrow('row-level security');
  });

  it('finds no slate through the services', async () => {
    const request = { slateId, idempotencyKey: 'theirs' };
    expect(await other.services.publishSlate.publish(other.actor, request)).toEqual({ kind: 'not-found' });
    expect(await other.services.requestBuild.request(other.actor, { slateId })).toEqual({
      kind: 'not-found',
    });
    expect(await other.services.createSlate.refresh(other.actor, slateId)).toEqual({ kind: 'not-found' });
  });
});

test('a publication that fails half-way leaves nothing behind', async () => {
  await home.database.owner.query(
    'delete from outbox_message; delete from assignment; delete from publication',
  );
  await home.database.owner.query('update seat set official_id = null');
  await home.place(gameId, 'chief', officialId);
  // The outbox is the last table but two that publishing writes.
  await home.database.owner.query(
    `alter table outbox_message add constraint broken check (kind <> 'assigned')`,
  );
  try {
    await expect(
      home.services.publishSlate.publish(home.actor, { slateId, idempotencyKey: 'half' }),
    ).rejects.toThrow('broken');
  } finally {
    await home.database.owner.query('alter table outbox_message drop constraint broken');
  }
  expect(await home.count('assignment')).toBe(0);
  expect(await home.count('publication')).toBe(0);
  expect(
    await home.services.publishSlate.publish(home.actor, { slateId, idempotencyKey: 'half' }),
  ).toMatchObject({
    kind: 'published',
    repeated: false,
  });
});
