import { randomUUID } from 'node:crypto';
import {
  associationPolicySchema,
  slateWeightsSchema,
  type AssociationPolicy,
} from '../../../src/access/association-policy';
import { FixedClock } from '../../../src/platform/clock';
import { Jobs } from '../../../src/platform/jobs';
import { createLog } from '../../../src/platform/log';
import type { SeatName } from '../../../src/slates/seat-name';
import { slateServices, type SlateServices } from '../../../src/slates/slate-services';
import type { SlateSolver } from '../../../src/slates/slate-solver';
import { solveSlate } from '../../../src/solver';
import { testDatabase, type TestDatabase } from '../../support/database/test-database';

/** Solves in the test's own thread, by a number of steps instead of a time. */
export const stepSolver: SlateSolver = {
  solve: (problem, { seed, signal, onProgress }) =>
    solveSlate(problem, {
      nowSeconds: () => performance.now() / 1000,
      steps: 3000,
      threads: 1,
      seed,
      signal,
      onProgress,
    }),
};

/** One association in a database of the test file's own, with the means to fill it. */
export interface SlateWorld {
  readonly database: TestDatabase;
  readonly associationId: string;
  readonly actor: { readonly associationId: string; readonly accountId: null };
  readonly clock: FixedClock;
  readonly jobs: Jobs;
  readonly services: SlateServices;
  readonly divisionId: string;
  insert(table: string, row: Record<string, unknown>): Promise<void>;
  /** An official who is free from Friday to Monday, at the given level. */
  addOfficial(name: string, overrides?: Record<string, unknown>): Promise<string>;
  /** A venue a few kilometres from every home. */
  addVenue(code: string): Promise<string>;
  /** A game of two teams of its own at 14:00 UTC on Saturday 28 November 2026, unless stated otherwise. */
  addGame(number: string, overrides?: Record<string, unknown>): Promise<string>;
  /** A slate of that weekend with every game in it. */
  openSlate(name?: string): Promise<string>;
  place(gameId: string, seat: SeatName, officialId: string | null, locked?: boolean): Promise<void>;
  assignments(gameId: string): Promise<AssignmentRow[]>;
  count(sql: string, ...values: unknown[]): Promise<number>;
}

export interface AssignmentRow {
  readonly id: string;
  readonly uid: string;
  readonly sequence: number;
  readonly seat: SeatName;
  readonly official_id: string;
  readonly reply: string;
  readonly end_reason: string | null;
  readonly starts_at: Date;
  readonly revised_at: Date;
}

export async function slateWorld(solver: SlateSolver = stepSolver): Promise<SlateWorld> {
  const database = await testDatabase();
  const jobs = await Jobs.start(database.dataSource, createLog({ level: 'silent' }));
  return joinWorld(database, jobs, solver);
}

/** A further association in the same database. */
export async function joinWorld(
  database: TestDatabase,
  jobs: Jobs,
  solver: SlateSolver = stepSolver,
): Promise<SlateWorld> {
  const { owner, dataSource, tenancy } = database;
  const clock = new FixedClock('2026-11-20T12:00:00Z');
  const associationId = randomUUID();
  const own = { association_id: associationId };
  const insert = async (table: string, row: Record<string, unknown>) => {
    const names = Object.keys(row);
    const places = names.map((_, index) => `$${index + 1}`);
    await owner.query(
      `insert into ${table} (${names.join(', ')}) values (${places.join(', ')})`,
      Object.values(row),
    );
  };
  const policy: AssociationPolicy = associationPolicySchema.parse({});
  await insert('association', {
    id: associationId,
    slug: `a${associationId}`,
    name: 'Test Coast',
    time_zone: 'Europe/Vienna',
    currency: 'EUR',
    emergency_number: '112',
    policy,
    weights: slateWeightsSchema.parse({}),
    travel_model: { name: 'car', circuity: 1.3, speedKmh: 50, fixedMinutes: 5 },
  });
  for (const level of [1, 2, 3, 4, 5]) await insert('level_step', { ...own, level, name: `Step ${level}` });
  const divisionId = randomUUID();
  await insert('division', {
    ...own,
    id: divisionId,
    code: 'D',
    name: 'Division',
    chief_min_level: 3,
    umpire_min_level: 1,
    chief_target_level: 4,
    umpire_target_level: 2,
    pairing_cost: [4, 0, 2],
    game_minutes: 90,
    playing_rules: {},
  });
  let places = 0;
  const addPlace = async () => {
    const id = randomUUID();
    places += 1;
    await insert('place', { ...own, id, latitude: 48.2 + places / 1000, longitude: 16.3 });
    return id;
  };
  const addVenue = async (code: string) => {
    const id = randomUUID();
    await insert('venue', {
      ...own,
      id,
      code,
      name: `Hall ${code}`,
      place_id: await addPlace(),
      time_zone: 'Europe/Vienna',
    });
    return id;
  };
  let firstVenueId: string | null = null;
  let teams = 0;
  const addTeam = async (name: string) => {
    const id = randomUUID();
    teams += 1;
    const code = `${name}${teams}`;
    await insert('team', { ...own, id, code, name: `Team ${code}` });
    return id;
  };
  const services = slateServices({ dataSource, tenancy, jobs, clock, solver });
  const actor = { associationId, accountId: null };
  return {
    database,
    associationId,
    actor,
    clock,
    jobs,
    services,
    divisionId,
    insert,
    addVenue,
    addOfficial: async (name, overrides = {}) => {
      const id = randomUUID();
      await insert('official', {
        ...own,
        id,
        number: name,
        given_name: name,
        family_name: 'Test',
        level: 4,
        may_be_chief: true,
        home_place_id: await addPlace(),
        max_home_minutes: 120,
        max_games_per_day: 2,
        max_games_per_slate: 4,
        ...overrides,
      });
      await insert('availability_rule', {
        ...own,
        id: randomUUID(),
        official_id: id,
        kind: 'available',
        local_date: '2026-11-27',
        local_time: '00:00',
        duration_minutes: 4 * 24 * 60,
        time_zone: 'Europe/Vienna',
        source: 'official',
      });
      return id;
    },
    addGame: async (number, overrides = {}) => {
      const id = randomUUID();
      firstVenueId ??= await addVenue('V');
      await insert('game', {
        ...own,
        id,
        number,
        division_id: divisionId,
        venue_id: firstVenueId,
        local_date: '2026-11-28',
        local_time: '15:00',
        time_zone: 'Europe/Vienna',
        starts_at: '2026-11-28T14:00:00Z',
        duration_minutes: 90,
        home_team_id: await addTeam(`${number}h`),
        away_team_id: await addTeam(`${number}a`),
        ...overrides,
      });
      return id;
    },
    openSlate: async (name = 'Weekend') => {
      const made = await services.createSlate.create(actor, {
        name,
        fromDate: '2026-11-28',
        toDate: '2026-11-29',
      });
      if (made.kind !== 'created') throw new Error(made.kind);
      return made.slateId;
    },
    place: async (gameId, seat, officialId, locked = false) => {
      await owner.query(
        'update seat set official_id = $4, locked = $5 where association_id = $1 and game_id = $2 and seat = $3',
        [associationId, gameId, seat, officialId, locked],
      );
    },
    assignments: async (gameId) => {
      const { rows } = await owner.query<AssignmentRow>(
        'select * from assignment where association_id = $1 and game_id = $2 order by created_at, seat',
        [associationId, gameId],
      );
      return rows;
    },
    count: async (sql, ...values) => {
      const { rows } = await owner.query<{ count: number }>(
        `select count(*)::int as count from ${sql}`,
        values,
      );
      return rows[0]?.count ?? -1;
    },
  };
}
