// Goal: what pages, feeds and briefings read is what was built, published and replied. Method: one published weekend with a
// change not yet published, a decline and a cancelled game; every reader is asked.
import { readGameCrew } from '../../../src/slates/game-crew.query';
import { readOfficialGames } from '../../../src/slates/official-games.query';
import { readReview } from '../../../src/slates/review-publication.query';
import { readSlateCrews } from '../../../src/slates/slate-crews.query';
import { readSlateSummaries } from '../../../src/slates/slate-summary.query';
import { slateWorld, type SlateWorld } from './slate-world';

let world: SlateWorld;
let slateId: string;
let ada: string;
let bea: string;
let cleo: string;
let early: string;
let late: string;
let off: string;
beforeAll(async () => {
  world = await slateWorld();
  ada = await world.addOfficial('Ada', { level: 5 });
  bea = await world.addOfficial('Bea', { level: 2, may_be_chief: false });
  cleo = await world.addOfficial('Cleo');
  late = await world.addGame('L1', { starts_at: '2026-11-28T17:00:00Z', local_time: '18:00' });
  early = await world.addGame('E1');
  off = await world.addGame('X1', {
    local_date: '2026-11-29',
    starts_at: '2026-11-29T10:00:00Z',
    local_time: '11:00',
  });
  slateId = await world.openSlate();
  await world.place(early, 'chief', ada, true);
  await world.place(early, 'umpire', bea);
  await world.place(late, 'chief', ada);
  await world.place(late, 'umpire', cleo);
  await world.place(off, 'chief', cleo);
  await world.services.publishSlate.publish(world.actor, { slateId, idempotencyKey: 'k1' });
  await reply(late, ada, 'ACCEPTED');
  await reply(late, cleo, 'DECLINED');
  await world.database.owner.query(`update game set status = 'CANCELLED' where id = $1`, [off]);
  // Bea is meant to be replaced; nobody has been told yet.
  await world.place(early, 'umpire', cleo);
});
afterAll(async () => {
  await world.jobs.stop({ timeoutMs: 1000 });
  await world.database.close();
});

async function reply(gameId: string, officialId: string, answer: 'ACCEPTED' | 'DECLINED'): Promise<void> {
  const row = (await world.assignments(gameId)).find((assignment) => assignment.official_id === officialId);
  const outcome = await world.services.reply.reply({
    associationId: world.associationId,
    accountId: null,
    officialId,
    assignmentId: row?.id ?? '',
    sequence: 0,
    reply: answer,
  });
  expect(outcome.kind).toBe('recorded');
}

const read = <T>(work: Parameters<typeof world.database.tenancy.read<T>>[1]) =>
  world.database.tenancy.read(world.associationId, work);

test('the summary counts games, seats, replies and what is not published yet', async () => {
  const [summary] = await read((tx) => readSlateSummaries(tx, world.associationId));
  expect(summary).toMatchObject({
    id: slateId,
    games: 2,
    cancelledGames: 1,
    seats: { total: 4, filled: 3, open: 1, keptOpen: 0, locked: 1 },
    // Ada twice, Bea, and Cleo for the game that was called off since.
    replies: { awaited: 3, accepted: 1, declined: 1 },
    published: { number: 1, changes: { added: 5, revised: 0, ended: 0 } },
    unpublished: { added: 1, revised: 0, ended: 2 },
    chosen: null,
    latestBuild: null,
  });
});

test('the crews say who is meant, who has been told, and who declined', async () => {
  const crews = await read((tx) => readSlateCrews(tx, world.associationId, slateId));
  expect(crews?.games.map(({ game }) => game.number)).toEqual(['E1', 'L1', 'X1']);
  const [first, second] = crews?.games ?? [];
  expect(first?.game).toMatchObject({
    localTime: '15:00',
    localDate: '2026-11-28',
    venue: { name: 'Hall V' },
  });
  expect(first?.chief).toMatchObject({ official: { name: 'Ada Test', levelName: 'Step 5' }, locked: true });
  expect(first?.umpire).toMatchObject({
    official: { id: cleo },
    told: { official: { id: bea }, reply: 'NEEDS-ACTION' },
  });
  expect(second?.chief.told).toMatchObject({ reply: 'ACCEPTED', sequence: 0 });
  expect(second?.umpire).toMatchObject({ official: null, told: null, declinedBy: [{ id: cleo }] });
});

test('an official sees own games with partners, ended ones only when asked', async () => {
  const games = await read((tx) => readOfficialGames(tx, world.associationId, ada));
  expect(games.map(({ game, partner }) => [game.number, partner?.name ?? null])).toEqual([
    ['E1', 'Bea Test'],
    ['L1', null],
  ]);
  const own = await read((tx) => readOfficialGames(tx, world.associationId, cleo));
  expect(own.map(({ game }) => game.number)).toEqual(['X1']);
  const all = await read((tx) => readOfficialGames(tx, world.associationId, cleo, { withEnded: true }));
  expect(all.map(({ game, assignment }) => [game.number, assignment.endReason])).toEqual([
    ['L1', 'declined'],
    ['X1', null],
  ]);
  const later = await read((tx) =>
    readOfficialGames(tx, world.associationId, ada, { endingFrom: new Date('2026-11-28T16:00:00Z') }),
  );
  expect(later.map(({ game }) => game.number)).toEqual(['L1']);
});

test('a game has the crew that was told', async () => {
  const crew = await read((tx) => readGameCrew(tx, world.associationId, early));
  expect(crew).toMatchObject({
    slateId,
    chief: { official: { id: ada } },
    umpire: { official: { id: bea } },
  });
  expect(await read((tx) => readGameCrew(tx, world.associationId, slateId))).toBeNull();
});

test('the review prices the working copy and names what stands against it', async () => {
  const review = await read((tx) => readReview(tx, world.associationId, slateId));
  expect(review).toMatchObject({ reasons: [], preview: { unchanged: 2 } });
  // One open seat of the default price.
  expect(review?.cost.open).toBe(10_000);
  expect(await read((tx) => readReview(tx, world.associationId, early))).toBeNull();
});

test('refreshing takes in new games and lets go of those that moved away unpublished', async () => {
  const fresh = await world.addGame('N1', {
    local_date: '2026-11-29',
    starts_at: '2026-11-29T12:00:00Z',
    local_time: '13:00',
  });
  const first = await world.services.createSlate.refresh(world.actor, slateId);
  expect(first).toMatchObject({ kind: 'refreshed', added: [fresh], removed: [], cancelled: [off] });
  await world.database.owner.query(`update game set local_date = '2026-12-05' where id = any ($1)`, [
    [fresh, early],
  ]);
  const second = await world.services.createSlate.refresh(world.actor, slateId);
  expect(second).toMatchObject({ added: [], removed: [fresh], movedAway: [early] });
  expect(await world.count('seat where game_id = $1', fresh)).toBe(0);
  expect(await world.services.createSlate.refresh(world.actor, slateId)).toMatchObject({
    added: [],
    removed: [],
  });
});

test('a slate needs a name of its own and days in order', async () => {
  const create = (name: string, fromDate: string, toDate: string) =>
    world.services.createSlate.create(world.actor, { name, fromDate, toDate });
  expect(await create('Weekend', '2026-12-05', '2026-12-06')).toEqual({ kind: 'name-taken' });
  expect(await create(' ', '2026-02-30', '2026-12-06')).toMatchObject({
    kind: 'refused',
    faults: [{ field: 'name' }, { field: 'fromDate' }],
  });
  expect(await create('Back', '2026-12-06', '2026-12-05')).toMatchObject({ faults: [{ field: 'toDate' }] });
});
