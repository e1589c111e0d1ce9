import { randomUUID } from 'node:crypto';
import { Writable } from 'node:stream';
import { OutboxMessage } from '../../../src/notices/outbox-message.entity';
import { claimDueMessages, readOutboxState, settleMessage } from '../../../src/notices/outbox';
import { readOutboxHealth } from '../../../src/notices/outbox-health';
import { OutboxWorkers } from '../../../src/notices/outbox-workers';
import { attemptsMax } from '../../../src/notices/retry';
import { SendOutboxService } from '../../../src/notices/send-outbox.service';
import { SmtpMailer } from '../../../src/notices/smtp-mailer';
import { FixedClock } from '../../../src/platform/clock';
import { Jobs } from '../../../src/platform/jobs';
import { createLog } from '../../../src/platform/log';
import { Official } from '../../../src/roster/official.entity';
import { Assignment } from '../../../src/slates/assignment.entity';
import { queueMessages } from '../../../src/slates/tell-officials';
import { smallAssociation, type SmallAssociation } from '../calendar/small-association';
import { testDatabase, type TestDatabase } from '../../support/database/test-database';
import { mailCatcher, type MailCatcher } from './mail-catcher';

// Goal: each message arrives at least once, old news never, and what cannot arrive is there to be seen. Method:
// the real outbox, written as publishing writes it, against a mail server of our own that refuses and delays;
// every message is read back by an independent parser. Each test has an association to itself.
const log = createLog({ level: 'trace', destination: new Writable({ write: (_c, _e, done) => done() }) });
const publicUrl = () => 'https://crews.example.org';
let database: TestDatabase;
let catcher: MailCatcher;
let mailer: SmtpMailer;
let clock: FixedClock;
let ours: SmallAssociation;
let slugs = 0;

beforeAll(async () => {
  database = await testDatabase();
  catcher = await mailCatcher();
  mailer = new SmtpMailer({ smtpUrl: catcher.url, publicUrl });
}, 120_000);
afterAll(async () => {
  mailer.close();
  await catcher.close();
  await database.close();
});
beforeEach(async () => {
  clock = new FixedClock('2026-11-20T12:00:00Z');
  catcher.onTaken = async () => undefined;
  (catcher.taken as unknown[]).length = 0;
  slugs += 1;
  ours = await smallAssociation(database.tenancy, {
    slug: `association-${slugs}`,
    umpireBirthDate: '2011-05-01',
  });
});

const outbox = (send: Pick<SmtpMailer, 'send'> = mailer) =>
  new SendOutboxService({ tenancy: database.tenancy, clock, log, mailer: send, publicUrl });

type Kind = 'assigned' | 'changed' | 'ended';
const queue = (kind: Kind, sequence = 0, assignmentId = ours.chiefAssignmentId, officialId = ours.chiefId) =>
  database.tenancy.run(ours.id, (tx) =>
    queueMessages(
      tx,
      ours.id,
      [{ assignmentId, sequence, officialId, gameId: ours.gameId, kind }],
      clock.now(),
    ),
  );
const change = (values: Partial<Assignment>) =>
  database.tenancy.run(ours.id, (tx) =>
    tx.update(Assignment, { associationId: ours.id, id: ours.chiefAssignmentId }, values),
  );
const rows = () =>
  database.tenancy.read(ours.id, (tx) =>
    tx.find(OutboxMessage, { where: { associationId: ours.id }, order: { createdAt: 'ASC', kind: 'ASC' } }),
  );

it('sends a message that a person and a mail program can use', async () => {
  await queue('assigned');
  expect(await outbox().sendDue(ours.id)).toEqual({ sent: 1, superseded: 0, retry: 0, dead: 0 });
  const [mail] = catcher.taken;
  expect(mail?.subject).toBe(
    'Please reply: crew chief, Harbour Gulls v Dune Runners, Saturday 28 November, 18:30',
  );
  expect(mail?.from?.value).toEqual([
    { name: `Association association-${slugs}`, address: 'notices@crews.example.org' },
  ]);
  expect(mail?.to).toMatchObject({ value: [{ name: 'Ida Sandell', address: 'ida@officials.example' }] });
  expect(mail?.replyTo?.value[0]?.address).toBe('assignor@marram.example');
  expect(mail?.messageId).toBe(`<${ours.chiefAssignmentId}.0.assigned@crews.example.org>`);
  expect(mail?.references).toBe(`<${ours.chiefAssignmentId}.thread@crews.example.org>`);
  expect(mail?.headers.get('auto-submitted')).toBe('auto-generated');
  for (const body of [mail?.text ?? '', typeof mail?.html === 'string' ? mail.html : '']) {
    expect(body).toContain('18:30, Saturday 28 November 2026 (Europe/London, GMT)');
    expect(body).toContain('18:10');
    expect(body).toContain('Saltmarsh Hall, Court 2, 4 Reed Lane, Marram');
    expect(body).toContain(`https://crews.example.org/association-${slugs}/games/${ours.gameId}/briefing`);
  }
  // The feed is the calendar: no invitation, no attachment.
  expect(mail?.attachments).toEqual([]);
  expect(await outbox().sendDue(ours.id)).toEqual({ sent: 0, superseded: 0, retry: 0, dead: 0 });
});

it('queues and sends the same news once', async () => {
  await queue('assigned');
  await queue('assigned');
  await outbox().sendDue(ours.id);
  expect(catcher.taken).toHaveLength(1);
});

it('writes nothing when the transaction that told it fails', async () => {
  const failing = database.tenancy.run(ours.id, async (tx) => {
    const told = {
      assignmentId: ours.chiefAssignmentId,
      sequence: 0,
      officialId: ours.chiefId,
      gameId: ours.gameId,
    };
    await queueMessages(tx, ours.id, [{ ...told, kind: 'assigned' as const }], clock.now());
    throw new Error('no');
  });
  await expect(failing).rejects.toThrow('no');
  expect(await rows()).toEqual([]);
});

it('drops what a newer message has overtaken: published, moved and cancelled within a minute is one mail', async () => {
  await queue('assigned', 0);
  await change({ sequence: 1 });
  await queue('changed', 1);
  await change({ sequence: 2, endedAt: clock.now(), endReason: 'game-cancelled' });
  await queue('ended', 2);
  expect(await outbox().sendDue(ours.id)).toEqual({ sent: 1, superseded: 2, retry: 0, dead: 0 });
  expect(catcher.taken.map((mail) => mail.subject)).toEqual([
    'Cancelled: Harbour Gulls v Dune Runners, Saturday 28 November, 18:30',
  ]);
});

it('drops what has been answered meanwhile, and what is over', async () => {
  await queue('assigned');
  await change({ reply: 'ACCEPTED' });
  expect(await outbox().sendDue(ours.id)).toMatchObject({ sent: 0, superseded: 1 });
  await change({ reply: 'NEEDS-ACTION', sequence: 1 });
  await queue('changed', 1);
  clock.moveTo('2026-11-28T20:15:00Z');
  expect(await outbox().sendDue(ours.id)).toMatchObject({ sent: 0, superseded: 1 });
  expect(catcher.taken).toEqual([]);
});

it('tries again after 4xx, later each time, and ends after 5xx', async () => {
  await queue('assigned');
  catcher.refuseNext(451, 421);
  expect(await outbox().sendDue(ours.id)).toMatchObject({ retry: 1 });
  expect(await outbox().sendDue(ours.id)).toMatchObject({ sent: 0, retry: 0 });
  clock.advanceMinutes(1);
  expect(await outbox().sendDue(ours.id)).toMatchObject({ retry: 1 });
  clock.advanceMinutes(1);
  expect(await outbox().sendDue(ours.id)).toMatchObject({ sent: 0, retry: 0 });
  clock.advanceMinutes(1);
  expect(await outbox().sendDue(ours.id)).toMatchObject({ sent: 1 });
  const [row] = await rows();
  expect(row).toMatchObject({ attempts: 3, lastFault: null, sentAt: clock.now() });

  await change({ sequence: 1 });
  await queue('changed', 1);
  catcher.refuseNext(550);
  expect(await outbox().sendDue(ours.id)).toMatchObject({ dead: 1 });
  expect((await rows()).find(({ kind }) => kind === 'changed')?.lastFault).toContain('no such mailbox');
});

it('ends after so many tries in vain, and says so', async () => {
  await queue('assigned');
  const away = new SmtpMailer({ smtpUrl: 'smtp://127.0.0.1:1', publicUrl });
  let tries = 0;
  for (let rounds = 0; rounds < 40; rounds += 1) {
    const report = await outbox(away).sendDue(ours.id);
    tries += report.retry + report.dead;
    if (report.dead === 1) break;
    clock.advanceMinutes(60);
  }
  away.close();
  expect(tries).toBe(attemptsMax);
  const state = await database.tenancy.read(ours.id, (tx) => readOutboxState(tx, ours.id));
  expect(state).toEqual({ waiting: 0, dead: 1, oldestWaitingSince: null });
});

it('sends again, under the same Message-ID, what a worker died on after the server said yes', async () => {
  await queue('assigned');
  // The worker hangs once the server has taken the message, and never gets to write that down.
  let isTaken = false;
  const hanging = outbox({
    send: async (mail) => {
      await mailer.send(mail);
      isTaken = true;
      await new Promise<never>(() => undefined);
    },
  });
  void hanging.sendDue(ours.id);
  while (!isTaken) await new Promise((resolve) => setTimeout(resolve, 10));
  expect(catcher.taken).toHaveLength(1);
  expect(await outbox().sendDue(ours.id)).toMatchObject({ sent: 0 });
  clock.advanceMinutes(6);
  expect(await outbox().sendDue(ours.id)).toMatchObject({ sent: 1 });
  expect(catcher.taken).toHaveLength(2);
  expect(catcher.taken[1]?.messageId).toBe(catcher.taken[0]?.messageId);
});

it('lets a worker whose lease has ended write nothing', async () => {
  await queue('assigned');
  const claim = (minutes: number) =>
    database.tenancy.run(ours.id, (tx) =>
      claimDueMessages(tx, {
        associationId: ours.id,
        now: clock.now(),
        leasedUntil: new Date(clock.now().getTime() + minutes * 60_000),
        limit: 10,
      }),
    );
  const [slow] = await claim(5);
  expect(await claim(5)).toEqual([]);
  clock.advanceMinutes(5);
  const [next] = await claim(5);
  if (slow === undefined || next === undefined) throw new Error('not claimed');
  const settle = (message: typeof slow) =>
    database.tenancy.run(ours.id, (tx) => settleMessage(tx, message, { kind: 'sent' }, clock.now()));
  expect(await settle(slow)).toBe(false);
  expect(await settle(next)).toBe(true);
  expect(await settle(next)).toBe(false);
});

it('shares the work among workers: forty messages, four workers, none twice', async () => {
  const count = 40;
  await database.tenancy.run(ours.id, async (tx) => {
    const [told] = await tx.findBy(Assignment, { associationId: ours.id, id: ours.chiefAssignmentId });
    if (told === undefined) throw new Error('no assignment');
    for (let number = 1; number <= count; number += 1) {
      // Games of one person on as many days.
      const later = (at: Date) => new Date(at.getTime() + number * 86_400_000);
      const game = await tx.query<{ id: string }[]>(
        `insert into game select association_id, gen_random_uuid(), number || '-' || $3::int, division_id, venue_id, court_id,
           local_date + $3::int, local_time, time_zone, zone_data_version, starts_at + $3::int * interval '1 day', duration_minutes,
           home_team_id, away_team_id, priority, status, note, version, updated_at
         from game where association_id = $1 and id = $2 returning id`,
        [ours.id, ours.gameId, number],
      );
      const gameId = game[0]?.id ?? '';
      const id = randomUUID();
      await tx.insert(Assignment, {
        ...told,
        id,
        uid: randomUUID(),
        gameId,
        startsAt: later(told.startsAt),
        endsAt: later(told.endsAt),
        dutyStartsAt: later(told.dutyStartsAt),
        dutyEndsAt: later(told.dutyEndsAt),
      });
      const news = {
        assignmentId: id,
        sequence: 0,
        officialId: ours.chiefId,
        gameId,
        kind: 'assigned' as const,
      };
      await queueMessages(tx, ours.id, [news], clock.now());
    }
  });
  const reports = await Promise.all([1, 2, 3, 4].map(() => outbox().sendDue(ours.id)));
  expect(reports.reduce((sum, report) => sum + report.sent, 0)).toBe(count);
  expect(reports.filter((report) => report.sent > 0).length).toBeGreaterThan(1);
  expect(catcher.taken).toHaveLength(count);
  expect(new Set(catcher.taken.map((mail) => mail.messageId)).size).toBe(count);
});

it('writes to the guardian of a minor too, and cannot write to who has no address', async () => {
  await queue('assigned', 0, ours.umpireAssignmentId, ours.umpireId);
  await outbox().sendDue(ours.id);
  expect(catcher.taken[0]?.to).toMatchObject({ value: [{ address: 'robin@officials.example' }] });
  expect(catcher.taken[0]?.cc).toMatchObject({
    value: [{ name: 'Pat Thrift', address: 'pat@thrift.example' }],
  });
  await database.tenancy.run(ours.id, (tx) =>
    tx.update(Official, { associationId: ours.id, id: ours.chiefId }, { email: null }),
  );
  await queue('assigned');
  expect(await outbox().sendDue(ours.id)).toMatchObject({ dead: 1 });
  expect((await rows()).map(({ lastFault }) => lastFault)).toContain('Official 101 has no e-mail address.');
});

it('lets nothing that people typed add a header or a recipient', async () => {
  const evil = 'Gulls\r\nBcc: evil@example.org\r\n\r\n<script>';
  await database.owner.query('update team set name = $2 where association_id = $1', [ours.id, evil]);
  await database.tenancy.run(ours.id, (tx) =>
    tx.update(
      Official,
      { associationId: ours.id, id: ours.chiefId },
      { givenName: 'Ida"\r\nCc: evil@example.org\r\n' },
    ),
  );
  await queue('assigned');
  expect(await outbox().sendDue(ours.id)).toMatchObject({ sent: 1 });
  const [mail] = catcher.taken;
  expect(mail?.cc).toBeUndefined();
  expect(mail?.bcc).toBeUndefined();
  expect([...(mail?.headers.keys() ?? [])]).not.toContain('bcc');
  expect(mail?.subject).toContain('Gulls Bcc: evil@example.org <script>');
  expect(mail?.html).not.toContain('<script>');
});

it('touches no other association', async () => {
  await queue('assigned');
  const other = await smallAssociation(database.tenancy, { slug: `other-${slugs}` });
  expect(await outbox().sendDue(other.id)).toEqual({ sent: 0, superseded: 0, retry: 0, dead: 0 });
  expect((await rows())[0]?.sentAt).toBeNull();
});

it('finds what is due by itself, and health tells when nobody sends', async () => {
  const jobs = await Jobs.start(database.dataSource, log);
  const health = (isConfigured: boolean) =>
    readOutboxHealth(database.tenancy, { isConfigured, now: clock.now() });
  await queue('assigned');
  expect(await health(false)).toMatchObject({ status: 'not configured' });
  clock.advanceMinutes(61);
  expect((await health(true)).waiting).toBeGreaterThanOrEqual(1);
  const workers = new OutboxWorkers(jobs, { tenancy: database.tenancy, clock, log, mailer, publicUrl });
  try {
    await workers.start();
    for (let waits = 0; waits < 100 && (await rows())[0]?.sentAt === null; waits += 1) {
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
  } finally {
    await workers.stop();
    await jobs.stop();
  }
  expect((await rows())[0]?.sentAt).toEqual(clock.now());
}, 30_000);
