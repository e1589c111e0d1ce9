// Goal: publishing is one step that happens wholly, once, or not at all, and tells exactly those concerned.
// Method: a small association in a real database; the working copy is set by hand, the assignments are read back.
import { slateWorld, type SlateWorld } from './slate-world';

let world: SlateWorld;
let chief: string;
let umpire: string;
let third: string;
beforeAll(async () => {
  world = await slateWorld();
  chief = await world.addOfficial('Ada');
  umpire = await world.addOfficial('Bea', { level: 2, may_be_chief: false });
  third = await world.addOfficial('Cleo');
});
afterAll(async () => {
  await world.jobs.stop({ timeoutMs: 1000 });
  await world.database.close();
});
afterEach(async () => {
  await world.database.owner.query(
    'truncate outbox_message, feed_revision, assignment, publication, proposal, build, seat, slate_game, slate, game cascade',
  );
});

const publish = (slateId: string, idempotencyKey: string) =>
  world.services.publishSlate.publish(world.actor, { slateId, idempotencyKey });

async function crewedSlate(): Promise<{ slateId: string; gameId: string }> {
  const gameId = await world.addGame(`G${Math.floor(performance.now() * 1000)}`);
  const slateId = await world.openSlate();
  await world.place(gameId, 'chief', chief);
  await world.place(gameId, 'umpire', umpire);
  return { slateId, gameId };
}

test('the first publication asks the crew, and the same key does nothing more', async () => {
  const { slateId, gameId } = await crewedSlate();
  const first = await publish(slateId, 'k1');
  expect(first).toMatchObject({
    kind: 'published',
    number: 1,
    repeated: false,
    changes: { added: 2, revised: 0, ended: 0 },
  });
  const rows = await world.assignments(gameId);
  expect(rows.map((row) => [row.seat, row.official_id, row.sequence, row.reply])).toEqual([
    ['chief', chief, 0, 'NEEDS-ACTION'],
    ['umpire', umpire, 0, 'NEEDS-ACTION'],
  ]);
  expect(await world.count(`outbox_message where kind = 'assigned'`)).toBe(2);
  expect(await world.count('feed_revision where revision = 1')).toBe(2);

  const again = await publish(slateId, 'k1');
  expect(again).toEqual({ ...first, repeated: true });
  expect(await publish(slateId, 'k2')).toEqual({ kind: 'unchanged' });
  expect(await world.count('outbox_message')).toBe(2);
  expect(await world.count('publication')).toBe(1);
  expect(await world.count(`audit_entry where action = 'slate.published' and object_id = $1`, slateId)).toBe(
    1,
  );
});

test('a moved game keeps its UID, raises the sequence and asks again', async () => {
  const { slateId, gameId } = await crewedSlate();
  await publish(slateId, 'k1');
  const before = await world.assignments(gameId);
  await world.services.reply.reply({
    associationId: world.associationId,
    accountId: null,
    officialId: chief,
    assignmentId: before[0]?.id ?? '',
    sequence: 0,
    reply: 'ACCEPTED',
  });
  await world.database.owner.query(
    `update game set starts_at = '2026-11-28T16:00:00Z', local_time = '17:00' where id = $1`,
    [gameId],
  );
  world.clock.advanceMinutes(5);
  expect(await publish(slateId, 'k2')).toMatchObject({
    number: 2,
    changes: { added: 0, revised: 2, ended: 0 },
  });
  const after = await world.assignments(gameId);
  expect(after.map((row) => row.uid)).toEqual(before.map((row) => row.uid));
  for (const row of after) {
    expect(row).toMatchObject({ sequence: 1, reply: 'NEEDS-ACTION', end_reason: null });
    expect(row.starts_at).toEqual(new Date('2026-11-28T16:00:00Z'));
    expect(row.revised_at).toEqual(world.clock.now());
  }
  expect(await world.count(`outbox_message where kind = 'changed' and sequence = 1`)).toBe(2);
});

test('a replaced official keeps the old UID to its end, the new one gets a new UID', async () => {
  const { slateId, gameId } = await crewedSlate();
  await publish(slateId, 'k1');
  const [told] = await world.assignments(gameId);
  await world.place(gameId, 'chief', third);
  expect(await publish(slateId, 'k2')).toMatchObject({ changes: { added: 1, revised: 0, ended: 1 } });
  const rows = await world.assignments(gameId);
  const old = rows.find((row) => row.official_id === chief);
  const fresh = rows.find((row) => row.official_id === third);
  expect(old).toMatchObject({ uid: told?.uid, sequence: 1, end_reason: 'replaced' });
  expect(fresh).toMatchObject({ sequence: 0, end_reason: null, seat: 'chief' });
  expect(fresh?.uid).not.toBe(told?.uid);
  // The umpire heard nothing, but the feed names the partner.
  expect(await world.count('outbox_message where official_id = $1', umpire)).toBe(1);
  expect(await world.count('feed_revision where official_id = $1 and revision = 2', umpire)).toBe(1);
});

test('two who exchange their seats keep their assignments', async () => {
  const gameId = await world.addGame('S1');
  const slateId = await world.openSlate();
  await world.place(gameId, 'chief', chief);
  await world.place(gameId, 'umpire', third);
  await publish(slateId, 'k1');
  const before = await world.assignments(gameId);
  await world.place(gameId, 'chief', null);
  await world.place(gameId, 'umpire', chief);
  await world.place(gameId, 'chief', third);
  expect(await publish(slateId, 'k2')).toMatchObject({ changes: { added: 0, revised: 2, ended: 0 } });
  const after = await world.assignments(gameId);
  expect(after.map((row) => row.uid).sort()).toEqual(before.map((row) => row.uid).sort());
  expect(after.find((row) => row.official_id === chief)).toMatchObject({ seat: 'umpire', sequence: 1 });
});

test('a cancelled game ends for its crew', async () => {
  const { slateId, gameId } = await crewedSlate();
  await publish(slateId, 'k1');
  await world.database.owner.query(`update game set status = 'CANCELLED' where id = $1`, [gameId]);
  expect(await publish(slateId, 'k2')).toMatchObject({ changes: { added: 0, revised: 0, ended: 2 } });
  const rows = await world.assignments(gameId);
  expect(rows.map((row) => [row.end_reason, row.sequence])).toEqual([
    ['game-cancelled', 1],
    ['game-cancelled', 1],
  ]);
});

test('two publishes at once make one publication', async () => {
  const { slateId } = await crewedSlate();
  const outcomes = await Promise.all([publish(slateId, 'a'), publish(slateId, 'b'), publish(slateId, 'a')]);
  const fresh = outcomes.filter((outcome) => outcome.kind === 'published' && !outcome.repeated);
  expect(fresh).toHaveLength(1);
  expect(await world.count('publication')).toBe(1);
  expect(await world.count('assignment')).toBe(2);
  expect(await world.count('outbox_message')).toBe(2);
});

test('crews that break rules are refused with names, and nothing is left behind', async () => {
  const { slateId, gameId } = await crewedSlate();
  await world.place(gameId, 'chief', null);
  await world.place(gameId, 'umpire', chief);
  await world.place(gameId, 'chief', umpire);
  const outcome = await publish(slateId, 'k1');
  expect(outcome.kind).toBe('refused');
  if (outcome.kind !== 'refused') return;
  expect(outcome.reasons.join('\n')).toContain('Bea Test');
  expect(outcome.reasons.join('\n')).toMatch(/\(H1\)/);
  expect(outcome.reasons.join('\n')).not.toMatch(/[0-9a-f]{8}-/);
  expect(await world.count('publication')).toBe(0);
  expect(await world.count('assignment')).toBe(0);
});

test('somebody who takes no part cannot be published', async () => {
  const { slateId, gameId } = await crewedSlate();
  const gone = await world.addOfficial('Dora', { active: false });
  await world.place(gameId, 'chief', gone);
  expect(await publish(slateId, 'k1')).toMatchObject({
    kind: 'refused',
    reasons: [expect.stringContaining('Dora Test cannot be chief')],
  });
});

test('a working copy that changed after it was looked at is not published', async () => {
  const { slateId } = await crewedSlate();
  const outcome = await world.services.publishSlate.publish(world.actor, {
    slateId,
    idempotencyKey: 'k1',
    expectedVersion: 1,
  });
  expect(outcome).toEqual({ kind: 'changed', version: 2 });
  expect(await world.count('assignment')).toBe(0);
});

test('the database has the last word on a person in two places', async () => {
  const { slateId, gameId } = await crewedSlate();
  // Another way into the table: somebody has been told of a game at the same time outside any slate.
  const other = await world.addGame('X9', { local_date: '2026-12-05' });
  await world.insert('assignment', {
    association_id: world.associationId,
    id: '00000000-0000-4000-8000-000000000001',
    uid: '00000000-0000-4000-8000-000000000002',
    game_id: other,
    seat: 'chief',
    official_id: chief,
    venue_id: await world.addVenue(`W${gameId.slice(0, 8)}`),
    starts_at: '2026-11-28T14:30:00Z',
    ends_at: '2026-11-28T16:00:00Z',
    duty_starts_at: '2026-11-28T14:10:00Z',
    duty_ends_at: '2026-11-28T16:15:00Z',
    created_at: world.clock.now(),
    revised_at: world.clock.now(),
  });
  const outcome = await publish(slateId, 'k1');
  expect(outcome).toMatchObject({ kind: 'refused' });
  if (outcome.kind !== 'refused') return;
  expect(outcome.reasons).toHaveLength(1);
  expect(outcome.reasons[0]).toMatch(/^Ada Test cannot work G\d+: has been told of X9 at that time\.$/);
  expect(await world.count('publication')).toBe(0);
  expect(await world.count('outbox_message')).toBe(0);
  expect(await world.count('assignment')).toBe(1);
});
