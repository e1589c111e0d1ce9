// Goal: past crews become assignments that the database's own constraints accept, and a correction ends what it replaces.
import { FixedClock } from '../../../src/platform/clock';
import { isEmptyPlan } from '../../../src/games/imports/import-plan';
import { ImportsService } from '../../../src/games/imports/imports.service';
import { crewsKind } from '../../../src/slates/import-crews';
import { testDatabase, type TestDatabase } from '../../support/database/test-database';
import { basics } from '../../unit/games/imported';
import { anAssociation } from '../games/an-association';

let database: TestDatabase;
beforeAll(async () => {
  database = await testDatabase();
}, 60_000);
afterAll(() => database.close());

const games =
  'number,division,venue,date,time,home,away\n' +
  'G1,D1,NORTH,2026-05-02,14:00,HER,TER\nG2,D1,NORTH,2026-05-02,15:40,TER,GUL\n';

test('crews are stored, recognised again, and corrected', async () => {
  const imports = new ImportsService(database.tenancy, new FixedClock('2026-06-01T10:00:00Z'));
  imports.register(crewsKind);
  const associationId = await anAssociation(database);
  const apply = (texts: Readonly<Record<string, string>>) =>
    imports.apply(
      associationId,
      Object.entries(texts).map(([kind, text]) => ({
        kind,
        name: kind,
        bytes: new TextEncoder().encode(text),
      })),
    );
  const crews = 'game,chief,umpire\nG1,1001,1002\nG2,1001,\n';
  expect((await apply({ ...basics, games, crews })).outcome).toBe('stored');
  expect(isEmptyPlan((await apply({ crews })).plan)).toBe(true);
  expect((await apply({ crews: crews.replace('1001,1002', '1002,1001') })).outcome).toBe('stored');
  const { rows } = await database.owner.query<Record<string, unknown>>(
    `select g.number as game, a.seat, o.number, a.end_reason, a.sequence, a.reply,
            extract(epoch from a.duty_ends_at - a.duty_starts_at)::int / 60 as minutes
       from assignment a join game g on g.id = a.game_id join official o on o.id = a.official_id
      where a.association_id = $1 order by 1, a.ended_at nulls first, 2`,
    [associationId],
  );
  const row = (game: string, seat: string, number: string, ended: boolean) => ({
    ...{ game, seat, number, reply: 'ACCEPTED', minutes: 135 },
    ...{ end_reason: ended ? 'replaced' : null, sequence: ended ? 1 : 0 },
  });
  expect(rows).toEqual([
    row('G1', 'chief', '1002', false),
    row('G1', 'umpire', '1001', false),
    row('G1', 'chief', '1001', true),
    row('G1', 'umpire', '1002', true),
    row('G2', 'chief', '1001', false),
  ]);
});
