// Goal: a reply is bound to what was shown, counts once, and a decline opens the seat. Method: every order of events on one game.
import { mapSlateProblem } from '../../../src/slates/slate-problem-mapping';
import { loadSlateRecords } from '../../../src/slates/load-slate-records';
import { slateWorld, type AssignmentRow, type SlateWorld } from './slate-world';

let world: SlateWorld;
let chief: string;
let umpire: string;
let games = 0;
beforeAll(async () => {
  world = await slateWorld();
  chief = await world.addOfficial('Ada');
  umpire = await world.addOfficial('Bea');
});
afterAll(async () => {
  await world.jobs.stop({ timeoutMs: 1000 });
  await world.database.close();
});
afterEach(async () => {
  world.clock.moveTo('2026-11-20T12:00:00Z');
  await world.database.owner.query(
    'truncate outbox_message, feed_revision, assignment, publication, proposal, build, seat, slate_game, slate, game cascade',
  );
});

async function published(): Promise<{ slateId: string; gameId: string; told: AssignmentRow }> {
  games += 1;
  const gameId = await world.addGame(`R${games}`);
  const slateId = await world.openSlate();
  await world.place(gameId, 'chief', chief, true);
  await world.place(gameId, 'umpire', umpire);
  await world.services.publishSlate.publish(world.actor, { slateId, idempotencyKey: `k${games}` });
  const told = (await world.assignments(gameId)).find((row) => row.official_id === chief);
  if (told === undefined) throw new Error('not published');
  return { slateId, gameId, told };
}

const reply = (
  told: AssignmentRow,
  answer: 'ACCEPTED' | 'DECLINED',
  sequence = told.sequence,
  officialId = chief,
) =>
  world.services.reply.reply({
    associationId: world.associationId,
    accountId: null,
    officialId,
    assignmentId: told.id,
    sequence,
    reply: answer,
  });

test('accepting leaves the sequence alone and is recorded once', async () => {
  const { gameId, told } = await published();
  world.clock.advanceMinutes(1);
  expect(await reply(told, 'ACCEPTED')).toEqual({ kind: 'recorded', reply: 'ACCEPTED' });
  expect(await reply(told, 'ACCEPTED')).toEqual({ kind: 'unchanged', reply: 'ACCEPTED' });
  const row = (await world.assignments(gameId)).find(({ id }) => id === told.id);
  expect(row).toMatchObject({ reply: 'ACCEPTED', sequence: 0, revised_at: world.clock.now() });
  expect(await world.count('feed_revision where official_id = $1 and revision = 2', chief)).toBe(1);
});

test('declining ends the assignment, empties and unlocks the seat, and counts once', async () => {
  const { slateId, gameId, told } = await published();
  expect(await reply(told, 'ACCEPTED')).toMatchObject({ kind: 'recorded' });
  expect(await reply(told, 'DECLINED')).toEqual({ kind: 'recorded', reply: 'DECLINED' });
  expect(await reply(told, 'DECLINED')).toEqual({ kind: 'unchanged', reply: 'DECLINED' });
  expect(await reply(told, 'ACCEPTED')).toEqual({ kind: 'ended', reason: 'declined' });
  const row = (await world.assignments(gameId)).find(({ id }) => id === told.id);
  expect(row).toMatchObject({ reply: 'DECLINED', end_reason: 'declined', sequence: 1 });
  expect(
    await world.count(
      `seat where game_id = $1 and seat = 'chief' and official_id is null and not locked`,
      gameId,
    ),
  ).toBe(1);
  expect(await world.count('slate where id = $1 and version = 3', slateId)).toBe(1);
});

test('who declined is not free for that tip-off in the next problem, and is when the game moves', async () => {
  const { slateId, gameId, told } = await published();
  await reply(told, 'DECLINED');
  const mappedChief = async () => {
    const records = await world.database.tenancy.read(world.associationId, (tx) =>
      loadSlateRecords(tx, world.associationId, slateId),
    );
    if (records === null) throw new Error('no slate');
    const { problem } = mapSlateProblem(records);
    const official = problem.officials.find(({ id }) => id === chief);
    const tipOff = problem.games[0]?.tipOff ?? '';
    return official?.available.some(({ from, to }) => from <= tipOff && tipOff < to);
  };
  expect(await mappedChief()).toBe(false);
  await world.database.owner.query(`update game set starts_at = '2026-11-28T17:00:00Z' where id = $1`, [
    gameId,
  ]);
  expect(await mappedChief()).toBe(true);
});

test('a reply to details that have changed since is asked for again', async () => {
  const { slateId, gameId, told } = await published();
  await world.database.owner.query(`update game set starts_at = '2026-11-28T17:00:00Z' where id = $1`, [
    gameId,
  ]);
  await world.services.publishSlate.publish(world.actor, { slateId, idempotencyKey: 'moved' });
  expect(await reply(told, 'DECLINED', 0)).toEqual({ kind: 'changed', sequence: 1 });
  expect(await reply(told, 'ACCEPTED', 1)).toEqual({ kind: 'recorded', reply: 'ACCEPTED' });
});

test('nobody replies for somebody else, nor after tip-off', async () => {
  const { told } = await published();
  expect(await reply(told, 'ACCEPTED', 0, umpire)).toEqual({ kind: 'not-found' });
  world.clock.moveTo('2026-11-28T14:00:00Z');
  expect(await reply(told, 'ACCEPTED')).toEqual({ kind: 'too-late' });
});

test('a decline and a publication at once never leave a declined official assigned', async () => {
  for (let round = 0; round < 5; round += 1) {
    const { slateId, gameId, told } = await published();
    await world.database.owner.query(`update game set starts_at = '2026-11-28T17:00:00Z' where id = $1`, [
      gameId,
    ]);
    const [answer, outcome] = await Promise.all([
      reply(told, 'DECLINED', 0),
      world.services.publishSlate.publish(world.actor, { slateId, idempotencyKey: `race${round}` }),
    ]);
    const row = (await world.assignments(gameId)).find(({ id }) => id === told.id);
    if (answer.kind === 'recorded') expect(row).toMatchObject({ end_reason: 'declined', sequence: 1 });
    else expect([answer.kind, outcome.kind, row?.sequence]).toEqual(['changed', 'published', 1]);
    await world.database.owner.query(
      'truncate outbox_message, feed_revision, assignment, publication, proposal, build, seat, slate_game, slate, game cascade',
    );
  }
});
