// Goal: pages and the API read what lists brought in, each association its own, in a stable order.
import { DivisionsService } from '../../../src/games/divisions.service';
import { GamesService } from '../../../src/games/games.service';
import { ImportsService } from '../../../src/games/imports/imports.service';
import { TeamsService } from '../../../src/games/teams.service';
import { VenuesService } from '../../../src/places/venues.service';
import { FixedClock } from '../../../src/platform/clock';
import { OfficialsService } from '../../../src/roster/officials.service';
import { testDatabase, type TestDatabase } from '../../support/database/test-database';
import { basics } from '../../unit/games/imported';
import { anAssociation } from './an-association';

let database: TestDatabase;
let associationId: string;

beforeAll(async () => {
  database = await testDatabase();
  const imports = new ImportsService(database.tenancy, new FixedClock('2026-06-01T10:00:00Z'));
  const lists = {
    ...basics,
    officials: `${basics.officials}1003,Di,Moe,2,no,,,,,\n`,
    games:
      'number,division,venue,court,date,time,home,away,status\n' +
      'G1,D1,NORTH,A,2026-09-05,14:00,HER,TER,\nG2,D1,SOUTH,,2026-09-06,15:30,TER,GUL,CANCELLED\n',
    availability: 'official,kind,date,from,to\n1001,busy,2026-09-05,09:00,12:00\n',
  };
  const files = Object.entries(lists).map(([kind, text]) => ({
    kind,
    name: kind,
    bytes: new TextEncoder().encode(text),
  }));
  associationId = await anAssociation(database);
  for (const id of [associationId, await anAssociation(database)]) await imports.apply(id, files);
  const retired = {
    kind: 'officials',
    name: 'x',
    bytes: new TextEncoder().encode(
      'number,given_name,family_name,level,may_be_chief,active\n1003,Di,Moe,2,no,no\n',
    ),
  };
  await imports.apply(associationId, [retired]);
}, 60_000);
afterAll(() => database.close());

const read = <T>(work: Parameters<TestDatabase['tenancy']['read']>[1]) =>
  database.tenancy.read(associationId, work) as Promise<T>;

test('officials by family name, with home, level name and rules', async () => {
  const service = new OfficialsService();
  await read(async (tx) => {
    const active = await service.list(tx, associationId);
    expect(active.map(({ official, levelName, home }) => [official.number, levelName, home])).toEqual([
      ['1001', 'Reed', { latitude: 56.12, longitude: 8.21 }],
      ['1002', 'Sprout', { latitude: 56.05, longitude: 8.25 }],
    ]);
    const all = await service.list(tx, associationId, { withInactive: true });
    expect(all.map(({ official, home }) => [official.number, home === null])).toContainEqual(['1003', true]);
    const ada = await service.findByNumber(tx, associationId, '1001');
    const id = ada?.official.id ?? '';
    expect((await service.get(tx, associationId, id))?.official.givenName).toBe('Ada');
    const rules = await service.availabilityRules(
      tx,
      associationId,
      all.map(({ official }) => official.id),
    );
    expect([...rules.values()].map((list) => list.length).sort()).toEqual([0, 0, 1]);
    expect(await service.findByNumber(tx, associationId, '9999')).toBeNull();
  });
});

test('venues with courts and position, divisions and teams by name', async () => {
  await read(async (tx) => {
    const venues = await new VenuesService().list(tx, associationId);
    expect(
      venues.map(({ venue, courts, position }) => [venue.name, courts.map(({ name }) => name), position]),
    ).toEqual([
      ['North Hall', ['A', 'B'], { latitude: 56.1, longitude: 8.2 }],
      ['South Hall', ['A'], { latitude: 56, longitude: 8.3 }],
      ['The Barn', [], null],
    ]);
    const divisions = await new DivisionsService().list(tx, associationId);
    expect(divisions.map(({ code }) => code)).toEqual(['D1']);
    const teams = await new TeamsService().list(tx, associationId, { divisionId: divisions[0]?.id ?? '' });
    expect(teams.map(({ name }) => name)).toEqual(['Gulls', 'Herons', 'Terns']);
  });
});

test('games of some days in order of tip-off, with the names of all they refer to', async () => {
  const service = new GamesService();
  await read(async (tx) => {
    const range = { fromDate: '2026-09-01', toDate: '2026-09-30' };
    const games = await service.list(tx, associationId, range);
    expect(
      games.map(({ game, venue, court, home, away }) => [
        game.number,
        venue.name,
        court?.name,
        home.name,
        away.name,
      ]),
    ).toEqual([
      ['G1', 'North Hall', 'A', 'Herons', 'Terns'],
      ['G2', 'South Hall', undefined, 'Terns', 'Gulls'],
    ]);
    const numbers = async (filter: object) =>
      (await service.list(tx, associationId, { ...range, ...filter })).map(({ game }) => game.number);
    expect(await numbers({ status: 'CONFIRMED' })).toEqual(['G1']);
    expect(await numbers({ toDate: '2026-09-05' })).toEqual(['G1']);
    expect(await numbers({ teamId: games[0]?.home.id })).toEqual(['G1']);
    expect(await numbers({ teamId: games[0]?.away.id })).toEqual(['G1', 'G2']);
    expect(await numbers({ venueId: games[1]?.venue.id })).toEqual(['G2']);
    expect((await service.findByNumber(tx, associationId, 'G2'))?.division.code).toBe('D1');
  });
});
