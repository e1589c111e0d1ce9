import { randomUUID } from 'node:crypto';
import { associationPolicySchema, slateWeightsSchema } from '../../../src/access/association-policy';
import { Association } from '../../../src/access/association.entity';
import { LevelStep } from '../../../src/access/level-step.entity';
import { FeedRevision } from '../../../src/calendar/feed-revision.entity';
import { Division } from '../../../src/games/division.entity';
import { Game } from '../../../src/games/game.entity';
import { playingRulesSchema } from '../../../src/games/playing-rules';
import { Team } from '../../../src/games/team.entity';
import { Court } from '../../../src/places/court.entity';
import { Place } from '../../../src/places/place.entity';
import { Venue } from '../../../src/places/venue.entity';
import type { Tenancy } from '../../../src/platform/tenancy';
import { Official } from '../../../src/roster/official.entity';
import { Assignment } from '../../../src/slates/assignment.entity';
import type { EntityManager } from 'typeorm';

/** An association with one game at one venue, a crew of two, and ids to refer to them. */
export interface SmallAssociation {
  readonly id: string;
  readonly slug: string;
  readonly chiefId: string;
  readonly umpireId: string;
  readonly venueId: string;
  readonly divisionId: string;
  readonly teamIds: readonly [string, string];
  readonly gameId: string;
  readonly chiefAssignmentId: string;
  readonly umpireAssignmentId: string;
}

/** Tip-off of the game: a Saturday in winter, 18:30 in London. */
export const tipOff = new Date('2026-11-28T18:30:00Z');
const minute = 60_000;

/** Writes the association through the application role, as every row of it must be written. */
export async function smallAssociation(
  tenancy: Tenancy,
  options: {
    readonly slug: string;
    readonly umpireBirthDate?: string;
    readonly replyAddress?: string | null;
  },
): Promise<SmallAssociation> {
  const id = randomUUID();
  return tenancy.run(id, async (tx) => {
    await tx.insert(Association, {
      id,
      slug: options.slug,
      name: options.slug === 'marram-coast' ? 'Marram Coast' : `Association ${options.slug}`,
      timeZone: 'Europe/London',
      language: 'en-GB',
      dateFormat: 'yyyy-MM-dd',
      currency: 'GBP',
      emergencyNumber: '112',
      replyAddress: options.replyAddress === undefined ? 'assignor@marram.example' : options.replyAddress,
      policy: associationPolicySchema.parse({}),
      weights: slateWeightsSchema.parse({}),
      travelModel: { name: 'Marram Coast estimate', circuity: 1.4, speedKmh: 50, fixedMinutes: 3 },
      version: 1,
      createdAt: tipOff,
      updatedAt: tipOff,
    });
    await tx.insert(LevelStep, { associationId: id, level: 3, name: 'Regional' });
    const home = await place(tx, id, 52.9, 0.7);
    const hall = await place(tx, id, 52.95, 0.85);
    const venueId = await venue(tx, id, hall);
    const courtId = randomUUID();
    await tx.insert(Court, { associationId: id, id: courtId, venueId, name: 'Court 2' });
    const divisionId = await division(tx, id);
    const teamIds = [
      await team(tx, id, 'Harbour Gulls', 'white'),
      await team(tx, id, 'Dune Runners', 'green'),
    ] as const;
    const chiefId = await official(tx, id, {
      number: '101',
      givenName: 'Ida',
      familyName: 'Sandell',
      homePlaceId: home,
    });
    const umpireId = await official(tx, id, {
      number: '102',
      givenName: 'Robin',
      familyName: 'Thrift',
      birthDate: options.umpireBirthDate ?? null,
      guardianName: 'Pat Thrift',
      guardianContact: 'pat@thrift.example',
    });
    const gameId = randomUUID();
    await tx.insert(Game, {
      associationId: id,
      id: gameId,
      number: 'MC-1042',
      divisionId,
      venueId,
      courtId,
      localDate: '2026-11-28',
      localTime: '18:30',
      timeZone: 'Europe/London',
      zoneDataVersion: 'test',
      startsAt: tipOff,
      durationMinutes: 105,
      homeTeamId: teamIds[0],
      awayTeamId: teamIds[1],
      priority: 1,
      status: 'CONFIRMED',
      note: '',
      version: 1,
      updatedAt: new Date('2026-11-10T09:00:00Z'),
    });
    const told = { associationId: id, gameId, venueId };
    const chiefAssignmentId = await assignment(tx, { ...told, seat: 'chief', officialId: chiefId });
    const umpireAssignmentId = await assignment(tx, { ...told, seat: 'umpire', officialId: umpireId });
    return {
      id,
      slug: options.slug,
      chiefId,
      umpireId,
      venueId,
      divisionId,
      teamIds,
      gameId,
      chiefAssignmentId,
      umpireAssignmentId,
    };
  });
}

/** As publishing and replying do in their transaction. */
export async function raiseFeedRevision(
  tx: EntityManager,
  associationId: string,
  officialId: string,
): Promise<void> {
  const row = await tx.findOneBy(FeedRevision, { associationId, officialId });
  const revision = String(Number(row?.revision ?? '0') + 1);
  await tx.save(FeedRevision, { associationId, officialId, revision, changedAt: tipOff });
}

async function place(
  tx: EntityManager,
  associationId: string,
  latitude: number,
  longitude: number,
): Promise<string> {
  const id = randomUUID();
  await tx.insert(Place, { associationId, id, latitude, longitude });
  return id;
}

async function venue(tx: EntityManager, associationId: string, placeId: string): Promise<string> {
  const id = randomUUID();
  await tx.insert(Venue, {
    associationId,
    id,
    code: 'SALT',
    name: 'Saltmarsh Hall',
    address: '4 Reed Lane',
    town: 'Marram',
    placeId,
    timeZone: 'Europe/London',
    entrance: 'Side door on Reed Lane; ring twice',
    changingRoom: 'Room B, key at the desk',
    tableSide: 'north',
    parking: '',
    hazards: '',
    emergencyAddress: '4 Reed Lane, Marram, gate 2',
    defibrillator: 'Foyer, left of the desk',
    firstAid: '',
    nearestHospital: 'Marram General, 6 km',
    active: true,
    version: 1,
  });
  return id;
}

async function division(tx: EntityManager, associationId: string): Promise<string> {
  const id = randomUUID();
  await tx.insert(Division, {
    associationId,
    id,
    code: 'U14',
    name: 'Under 14',
    chiefMinLevel: 2,
    umpireMinLevel: 1,
    chiefTargetLevel: 3,
    umpireTargetLevel: 2,
    pairingCost: [1, 0],
    gameMinutes: 105,
    priority: 1,
    playingRules: playingRulesSchema.parse({ periodMinutes: 8, ballSize: 6 }),
    feeChiefMinorUnits: 2500,
    feeUmpireMinorUnits: 2000,
    version: 1,
  });
  return id;
}

async function team(tx: EntityManager, associationId: string, name: string, colour: string): Promise<string> {
  const id = randomUUID();
  await tx.insert(Team, {
    associationId,
    id,
    code: name.slice(0, 4),
    name,
    divisionId: null,
    homeColour: colour,
    awayColour: colour,
    active: true,
    version: 1,
  });
  return id;
}

async function official(
  tx: EntityManager,
  associationId: string,
  change: Pick<Official, 'number' | 'givenName' | 'familyName'> & Partial<Official>,
): Promise<string> {
  const id = randomUUID();
  await tx.insert(Official, {
    associationId,
    id,
    level: 3,
    mayBeChief: true,
    birthDate: null,
    guardianName: '',
    guardianContact: '',
    homePlaceId: null,
    homeAddress: '9 Private Row, Marram',
    maxHomeMinutes: 90,
    maxGamesPerDay: 2,
    maxGamesPerSlate: 3,
    wishedGamesPerSlate: null,
    email: `${change.givenName.toLowerCase()}@officials.example`,
    phone: '+44 1632 960001',
    sharePhoneWithCrew: true,
    languages: [],
    certificateExpiresOn: null,
    active: true,
    version: 1,
    ...change,
  });
  return id;
}

async function assignment(
  tx: EntityManager,
  of: Pick<Assignment, 'associationId' | 'gameId' | 'venueId' | 'seat' | 'officialId'>,
): Promise<string> {
  const id = randomUUID();
  await tx.insert(Assignment, {
    ...of,
    id,
    uid: randomUUID(),
    sequence: 0,
    publicationId: null,
    startsAt: tipOff,
    endsAt: new Date(tipOff.getTime() + 105 * minute),
    dutyStartsAt: new Date(tipOff.getTime() - 20 * minute),
    dutyEndsAt: new Date(tipOff.getTime() + 120 * minute),
    reply: 'NEEDS-ACTION',
    repliedAt: null,
    replyReason: '',
    endReason: null,
    endedAt: null,
    createdAt: new Date('2026-11-19T20:00:00Z'),
    revisedAt: new Date('2026-11-19T20:00:00Z'),
  });
  return id;
}
