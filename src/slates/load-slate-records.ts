import { In, IsNull, type EntityManager } from 'typeorm';
import type { SlateWeights } from '../access/association-policy';
import { Association } from '../access/association.entity';
import { Conflict } from '../games/conflict.entity';
import { Division } from '../games/division.entity';
import { Game } from '../games/game.entity';
import { Place } from '../places/place.entity';
import { TravelLeg } from '../places/travel-leg.entity';
import { Venue } from '../places/venue.entity';
import { addDays } from '../platform/calendar-day';
import { availabilityWindows } from '../roster/availability-windows';
import { AvailabilityRule } from '../roster/availability-rule.entity';
import { isMinorOn } from '../roster/minors';
import { Official } from '../roster/official.entity';
import { Assignment } from './assignment.entity';
import { groupedBy } from './grouped-by';
import type { PastSeat } from './season-history';
import { seasonStart } from './season-start';
import { Seat } from './seat.entity';
import { SlateGame } from './slate-game.entity';
import type { DutyElsewhere, FreeTime, SlateRecords } from './slate-records';
import { Slate } from './slate.entity';

/**
 * Collects everything that bears on a slate, or null where the association has no such slate.
 *
 * @param weights instead of the slate's own, or else the association's
 */
export async function loadSlateRecords(
  tx: EntityManager,
  associationId: string,
  slateId: string,
  weights?: SlateWeights,
): Promise<SlateRecords | null> {
  const slate = await tx.findOneBy(Slate, { associationId, id: slateId });
  if (slate === null) return null;
  const association = await tx.findOneByOrFail(Association, { id: associationId });
  const links = await tx.findBy(SlateGame, { associationId, slateId });
  const gameIds = links.map((link) => link.gameId);
  const ofGames = { associationId, gameId: In(gameIds) };
  const officials = await tx.findBy(Official, { associationId });
  const { policy, timeZone } = association;
  return {
    slate,
    timeZone,
    policy,
    weights: weights ?? slate.weights ?? association.weights,
    travelModel: association.travelModel,
    officials: officials.map((official) => ({
      ...official,
      isMinor: isMinorOn(official.birthDate, slate.fromDate, policy.adultAge),
    })),
    freeTimeByOfficialId: await freeTime(tx, associationId, slate, timeZone),
    conflicts: await tx.findBy(Conflict, { associationId }),
    places: await tx.findBy(Place, { associationId }),
    legs: await tx.findBy(TravelLeg, { associationId, source: 'measured' }),
    venues: await tx.findBy(Venue, { associationId }),
    divisions: await tx.findBy(Division, { associationId }),
    games: await tx.findBy(Game, { associationId, id: In(gameIds) }),
    seats: await tx.findBy(Seat, ofGames),
    assignments: await tx.findBy(Assignment, { ...ofGames, endedAt: IsNull() }),
    declined: await tx.findBy(Assignment, { ...ofGames, endReason: 'declined' }),
    elsewhere: await dutiesElsewhere(tx, associationId, slate),
    past: await pastSeats(tx, associationId, slate, policy.recentDays),
  };
}

async function freeTime(
  tx: EntityManager,
  associationId: string,
  range: { readonly fromDate: string; readonly toDate: string },
  zone: string,
): Promise<Map<string, FreeTime>> {
  const rules = await tx.findBy(AvailabilityRule, { associationId });
  const { fromDate, toDate } = range;
  return new Map(
    [...groupedBy(rules, (rule) => rule.officialId)].map(([officialId, own]) => [
      officialId,
      availabilityWindows(own, { fromDate, toDate }, zone),
    ]),
  );
}

async function dutiesElsewhere(
  tx: EntityManager,
  associationId: string,
  slate: Pick<Slate, 'id' | 'fromDate' | 'toDate'>,
): Promise<DutyElsewhere[]> {
  const rows = await tx.query<Record<string, unknown>[]>(
    `select a.official_id, v.place_id, g.local_date, a.duty_starts_at, a.duty_ends_at
       from assignment a
       join game g on g.association_id = a.association_id and g.id = a.game_id
       join venue v on v.association_id = a.association_id and v.id = a.venue_id
      where a.association_id = $1 and a.ended_at is null and g.status <> 'CANCELLED'
        and g.local_date between $3::date and $4::date
        and not exists (select 1 from slate_game s
                         where s.association_id = a.association_id and s.game_id = a.game_id and s.slate_id = $2)
      order by a.duty_starts_at, a.id`,
    [associationId, slate.id, addDays(slate.fromDate, -2), addDays(slate.toDate, 2)],
  );
  return rows.map((row) => ({
    officialId: row['official_id'] as string,
    placeId: row['place_id'] as string | null,
    localDate: row['local_date'] as string,
    dutyStartsAt: row['duty_starts_at'] as Date,
    dutyEndsAt: row['duty_ends_at'] as Date,
  }));
}

async function pastSeats(
  tx: EntityManager,
  associationId: string,
  slate: Pick<Slate, 'fromDate'>,
  recentDays: number,
): Promise<PastSeat[]> {
  const from = [seasonStart(slate.fromDate), addDays(slate.fromDate, -recentDays)].sort()[0];
  const rows = await tx.query<Record<string, string>[]>(
    `select a.game_id, a.official_id, g.local_date, g.home_team_id, g.away_team_id
       from assignment a
       join game g on g.association_id = a.association_id and g.id = a.game_id
      where a.association_id = $1 and a.ended_at is null and g.status <> 'CANCELLED'
        and g.local_date >= $2::date and g.local_date < $3::date
      order by g.local_date, a.id`,
    [associationId, from, slate.fromDate],
  );
  return rows.map((row) => ({
    gameId: row['game_id'] ?? '',
    officialId: row['official_id'] ?? '',
    localDate: row['local_date'] ?? '',
    homeTeamId: row['home_team_id'] ?? '',
    awayTeamId: row['away_team_id'] ?? '',
  }));
}
