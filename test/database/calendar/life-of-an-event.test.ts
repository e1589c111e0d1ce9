import ICAL from 'ical.js';
import { AuditTrail } from '../../../src/access/audit-trail';
import { PersonalFeedsService } from '../../../src/calendar/personal-feeds.service';
import { FixedClock } from '../../../src/platform/clock';
import { applyPublication } from '../../../src/slates/apply-publication';
import { Assignment } from '../../../src/slates/assignment.entity';
import { ReplyService } from '../../../src/slates/reply.service';
import { reviseFeeds } from '../../../src/slates/tell-officials';
import { testDatabase, type TestDatabase } from '../../support/database/test-database';
import { smallAssociation, type SmallAssociation } from './small-association';

// Goal: over an event's whole life its UID stays, its SEQUENCE never falls and rises where it must, and both
// officials' feeds follow at once. Method: the services that publish and reply, and the feed read by ical.js
// after each step.
let database: TestDatabase;
let clock: FixedClock;
let ours: SmallAssociation;
let feeds: PersonalFeedsService;
let replies: ReplyService;

beforeAll(async () => {
  database = await testDatabase();
  clock = new FixedClock('2026-11-20T12:00:00Z');
  ours = await smallAssociation(database.tenancy, { slug: 'marram-coast' });
  feeds = new PersonalFeedsService(database.tenancy, clock, () => 'https://crews.example.org');
  replies = new ReplyService(database.tenancy, new AuditTrail(clock), clock);
}, 120_000);
afterAll(() => database.close());

async function eventsOf(officialId: string) {
  const feed = await feeds.feedOf(ours.id, officialId);
  if (feed === null) throw new Error('no feed');
  return new ICAL.Component(ICAL.parse(feed.body) as unknown[])
    .getAllSubcomponents('vevent')
    .map((vevent) => {
      const event = new ICAL.Event(vevent);
      return {
        uid: event.uid,
        sequence: event.sequence,
        status: String(vevent.getFirstPropertyValue('status')),
        startsAt: event.startDate.toJSDate().toISOString(),
        summary: event.summary,
        description: event.description,
        revised: String(vevent.getFirstPropertyValue('last-modified')),
      };
    });
}

const reply = (sequence: number, answer: 'ACCEPTED' | 'DECLINED') =>
  replies.reply({
    associationId: ours.id,
    accountId: null,
    officialId: ours.chiefId,
    assignmentId: ours.chiefAssignmentId,
    sequence,
    reply: answer,
  });

/** Publishes a new start for the chief, as a publication does. */
async function move(startsAt: Date): Promise<void> {
  const shift = (minutes: number) => new Date(startsAt.getTime() + minutes * 60_000);
  await database.tenancy.run(ours.id, async (tx) => {
    const row = await tx.findOneByOrFail(Assignment, { associationId: ours.id, id: ours.chiefAssignmentId });
    await applyPublication(
      tx,
      {
        added: [],
        ended: [],
        unchanged: 0,
        revised: [
          {
            assignmentId: row.id,
            gameId: row.gameId,
            seat: row.seat,
            officialId: row.officialId,
            differences: ['time'],
            told: {
              venueId: row.venueId,
              startsAt,
              endsAt: shift(105),
              dutyStartsAt: shift(-20),
              dutyEndsAt: shift(120),
            },
          },
        ],
      },
      { associationId: ours.id, id: await publicationId(), publishedAt: clock.now() },
    );
    await reviseFeeds(tx, ours.id, [ours.chiefId, ours.umpireId], clock.now());
  });
}

async function publicationId(): Promise<string> {
  const { rows } = await database.owner.query<{ id: string }>(
    `with s as (insert into slate (association_id, id, name, from_date, to_date, created_at)
       values ($1, gen_random_uuid(), 'Weekend ' || random(), '2026-11-28', '2026-11-29', now()) returning id)
     insert into publication (association_id, id, slate_id, number, idempotency_key, changes, published_at)
       select $1, gen_random_uuid(), id, 1, id::text, '{}', now() from s returning id`,
    [ours.id],
  );
  return rows[0]?.id ?? '';
}

it('published, accepted, moved, accepted again, declined', async () => {
  const [asked] = await eventsOf(ours.chiefId);
  expect(asked).toMatchObject({ sequence: 0, status: 'TENTATIVE', startsAt: '2026-11-28T18:10:00.000Z' });
  const [partner] = await eventsOf(ours.umpireId);
  expect(partner?.description).toContain('Partner (crew chief): Ida');
  expect(partner?.uid).not.toBe(asked?.uid);

  clock.advanceMinutes(10);
  expect(await reply(0, 'ACCEPTED')).toMatchObject({ kind: 'recorded' });
  const [accepted] = await eventsOf(ours.chiefId);
  // A reply does not raise the sequence (RFC 5546 §2.1.4), but it is a revision.
  expect(accepted).toMatchObject({ uid: asked?.uid, sequence: 0, status: 'CONFIRMED' });
  expect(accepted?.revised).not.toBe(asked?.revised);

  clock.advanceMinutes(10);
  await move(new Date('2026-12-05T17:00:00Z'));
  const [moved] = await eventsOf(ours.chiefId);
  expect(moved).toMatchObject({ uid: asked?.uid, sequence: 1, status: 'TENTATIVE' });
  expect(moved?.startsAt).toBe('2026-12-05T16:40:00.000Z');

  clock.advanceMinutes(10);
  expect(await reply(0, 'ACCEPTED')).toEqual({ kind: 'changed', sequence: 1 });
  expect(await reply(1, 'ACCEPTED')).toMatchObject({ kind: 'recorded' });
  clock.advanceMinutes(10);
  expect(await reply(1, 'DECLINED')).toMatchObject({ kind: 'recorded' });
  const [declined] = await eventsOf(ours.chiefId);
  expect(declined).toMatchObject({ uid: asked?.uid, sequence: 2, status: 'CANCELLED' });
  expect(declined?.summary).toMatch(/^CANCELLED \(you declined\)/);
  expect(declined?.description).not.toContain('Robin');
  const [left] = await eventsOf(ours.umpireId);
  expect(left?.description).toContain('Partner: not named yet');

  // Fourteen days after the game the tombstone goes, without anything having been written.
  clock.moveTo('2026-12-19T16:59:00Z');
  expect(await eventsOf(ours.chiefId)).toHaveLength(1);
  clock.moveTo('2026-12-20T00:00:00Z');
  expect(await eventsOf(ours.chiefId)).toEqual([]);
});
