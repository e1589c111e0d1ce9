import { AuditTrail } from '../../../src/access/audit-trail';
import type { Role } from '../../../src/access/role';
import { FixedClock } from '../../../src/platform/clock';
import { gameReportForm } from '../../../src/season/game-report-form';
import { GameReportsService } from '../../../src/season/game-reports.service';
import { observationForm, ObservationsService } from '../../../src/season/observations.service';
import { reflectionForm, ReflectionsService } from '../../../src/season/reflections.service';
import { smallAssociation, tipOff, type SmallAssociation } from '../calendar/small-association';
import { testDatabase, type TestDatabase } from '../../support/database/test-database';
import { addMember } from '../../support/http/test-service';

// Goal: who was there writes, who may reads, and nobody else does either. Method: the services on a database
// with two associations, one game each.
let database: TestDatabase;
let clock: FixedClock;
let ours: SmallAssociation;
let theirs: SmallAssociation;
let reports: GameReportsService;
let reflections: ReflectionsService;
let observations: ObservationsService;
let observerAccountId: string;

beforeAll(async () => {
  database = await testDatabase();
  clock = new FixedClock(tipOff.toISOString());
  ours = await smallAssociation(database.tenancy, { slug: 'marram-coast' });
  theirs = await smallAssociation(database.tenancy, { slug: 'elsewhere' });
  reports = new GameReportsService(database.tenancy, new AuditTrail(clock), clock);
  reflections = new ReflectionsService(database.tenancy, clock);
  observations = new ObservationsService(database.tenancy, clock);
  observerAccountId = await addMember(database, { associationId: ours.id, roles: ['observer'] });
}, 120_000);
afterAll(() => database.close());
beforeEach(() => clock.moveTo(tipOff.toISOString()));

const member = (officialId: string | null, ...roles: Role[]) => ({
  associationId: ours.id,
  accountId: observerAccountId,
  officialId,
  roles,
});

describe('the game report', () => {
  const form = gameReportForm.parse({ played: 'as-planned', homeScore: 61, awayScore: 58 });

  it('is filed and corrected by the crew, from tip-off on', async () => {
    clock.moveTo('2026-11-28T18:29:00Z');
    expect(await reports.file(member(ours.chiefId, 'official'), ours.gameId, form)).toEqual({
      kind: 'too-early',
      from: tipOff,
    });
    clock.moveTo('2026-11-28T20:30:00Z');
    expect(await reports.file(member(ours.chiefId, 'official'), ours.gameId, form)).toMatchObject({
      kind: 'filed',
      report: { homeScore: 61, filedByOfficialId: ours.chiefId },
    });
    const corrected = { ...form, awayScore: 59, incidents: 'Shot clock failed in the third quarter.' };
    expect(await reports.file(member(ours.umpireId, 'official'), ours.gameId, corrected)).toMatchObject({
      kind: 'filed',
      report: { awayScore: 59, filedByOfficialId: ours.umpireId },
    });
    const { rows } = await database.owner.query<{ action: string }>(
      `select action from audit_entry where object_id = $1 order by at, action desc`,
      [ours.gameId],
    );
    expect(rows.map(({ action }) => action)).toEqual(['game-report.filed', 'game-report.corrected']);
  });

  it('is read by crew and assignor, and by nobody else', async () => {
    expect((await reports.read(member(ours.chiefId, 'official'), ours.gameId))?.awayScore).toBe(59);
    expect((await reports.read(member(null, 'assignor'), ours.gameId))?.awayScore).toBe(59);
    expect(await reports.read(member(null, 'observer'), ours.gameId)).toBeNull();
    expect(
      await reports.read({ ...member(null, 'assignor'), associationId: theirs.id }, ours.gameId),
    ).toBeNull();
    expect(await reports.file(member(null, 'assignor'), ours.gameId, form)).toEqual({ kind: 'not-crew' });
    expect(await reports.file(member(ours.chiefId, 'official'), theirs.gameId, form)).toEqual({
      kind: 'not-crew',
    });
  });

  it.each([
    [{ played: 'as-planned', homeScore: 61 }, 'Give both scores or none.'],
    [{ played: 'not-played', homeScore: 0, awayScore: 0 }, 'A game that was not played has no score.'],
    [{ played: 'as-planned', homeScore: -1, awayScore: 0 }, '>=0'],
    [{ played: 'perhaps' }, 'as-planned'],
  ])('refuses %o', (input, words) => {
    const parsed = gameReportForm.safeParse(input);
    expect(parsed.success).toBe(false);
    expect(parsed.error?.issues.map(({ message }) => message).join()).toContain(words);
  });
});

describe('the reflection', () => {
  const form = reflectionForm.parse({ keptFirst: 'eye contact', toChange: 'earlier in the corner' });

  it('is its owner’s alone', async () => {
    expect(await reflections.write(member(ours.chiefId, 'official'), ours.gameId, form)).toMatchObject({
      kind: 'written',
    });
    expect((await reflections.readOwn(member(ours.chiefId, 'official'), ours.gameId))?.toChange).toBe(
      'earlier in the corner',
    );
    expect(await reflections.readOwn(member(ours.umpireId, 'official'), ours.gameId)).toBeNull();
    expect(await reflections.readShared(member(null, 'observer'), ours.chiefId)).toEqual([]);
  });

  it('is read by observers once shared, and by nobody else; unshared and taken away at will', async () => {
    await reflections.write(member(ours.chiefId), ours.gameId, { ...form, sharedWithMentor: true });
    expect(await reflections.readShared(member(null, 'observer'), ours.chiefId)).toHaveLength(1);
    for (const role of ['assignor', 'administrator', 'treasurer', 'official'] as const) {
      expect(await reflections.readShared(member(null, role), ours.chiefId)).toEqual([]);
    }
    await reflections.write(member(ours.chiefId), ours.gameId, form);
    expect(await reflections.readShared(member(null, 'observer'), ours.chiefId)).toEqual([]);
    expect(await reflections.takeAway(member(ours.chiefId), ours.gameId)).toBe(true);
    expect(await reflections.takeAway(member(ours.chiefId), ours.gameId)).toBe(false);
  });

  it('is written by who was there, after tip-off', async () => {
    expect(await reflections.write(member(null, 'observer'), ours.gameId, form)).toEqual({
      kind: 'not-crew',
    });
    clock.moveTo('2026-11-28T10:00:00Z');
    expect(await reflections.write(member(ours.chiefId), ours.gameId, form)).toMatchObject({
      kind: 'too-early',
    });
  });
});

describe('the observation', () => {
  const form = observationForm.parse({ strengths: 'calm', oneThing: 'count aloud', suggestedLevel: 3 });
  const about = () => ({ gameId: ours.gameId, officialId: ours.umpireId });

  it('is noted by an observer, once a game and official, and read by the observed', async () => {
    expect(await observations.note(member(null, 'observer'), about(), form)).toMatchObject({ kind: 'noted' });
    const again = { ...form, oneThing: 'closer to the play' };
    expect(await observations.note(member(null, 'observer'), about(), again)).toMatchObject({
      kind: 'noted',
    });
    const read = await observations.ofOfficial(member(ours.umpireId, 'official'), ours.umpireId);
    expect(read.map(({ oneThing }) => oneThing)).toEqual(['closer to the play']);
    expect(await observations.ofOfficial(member(ours.chiefId, 'official'), ours.umpireId)).toEqual([]);
    expect(await observations.ofOfficial(member(null, 'assignor'), ours.umpireId)).toEqual([]);
  });

  it('needs an observer, a seat in the game, a known level, and a game that has begun', async () => {
    expect(await observations.note(member(null, 'assignor'), about(), form)).toEqual({
      kind: 'not-observer',
    });
    expect(await observations.note(member(ours.umpireId, 'observer'), about(), form)).toEqual({
      kind: 'not-observer',
    });
    const elsewhere = { ...about(), gameId: theirs.gameId };
    expect(await observations.note(member(null, 'observer'), elsewhere, form)).toEqual({
      kind: 'not-in-game',
    });
    expect(
      await observations.note(member(null, 'observer'), about(), { ...form, suggestedLevel: 9 }),
    ).toEqual({
      kind: 'unknown-level',
      level: 9,
    });
    clock.moveTo('2026-11-28T10:00:00Z');
    expect(await observations.note(member(null, 'observer'), about(), form)).toMatchObject({
      kind: 'too-early',
    });
  });
});
