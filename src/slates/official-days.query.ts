import { In, type EntityManager } from 'typeorm';
import type { Association } from '../access/association.entity';
import { localParts } from '../platform/local-time';
import { Place } from '../places/place.entity';
import { measuredLegs, type MeasuredLegs, type PlacedPosition } from '../places/travel-estimate';
import { TravelLeg } from '../places/travel-leg.entity';
import { Venue } from '../places/venue.entity';
import { Official } from '../roster/official.entity';
import { dayJourneys, type Journey, type JourneyDuty } from './day-journeys';
import { readOfficialGames, type OfficialGame } from './official-games.query';

/** One assignment of an official with the venue that they were told, and the way there. */
export interface OfficialDuty extends OfficialGame {
  readonly venue: Venue;
  readonly place: PlacedPosition | null;
  /** Null once the assignment has ended. */
  readonly journey: Journey | null;
}

export interface OfficialDuties {
  readonly official: Official;
  readonly home: PlacedPosition | null;
  readonly duties: readonly OfficialDuty[];
  readonly legs: MeasuredLegs;
}

/**
 * An official's assignments with the ways between home and venues, or null where the association has no such
 * official.
 *
 * @param options as for `readOfficialGames`
 */
export async function readOfficialDuties(
  tx: EntityManager,
  association: Pick<Association, 'id' | 'travelModel'>,
  officialId: string,
  options: Parameters<typeof readOfficialGames>[3] = {},
): Promise<OfficialDuties | null> {
  const associationId = association.id;
  const official = await tx.findOneBy(Official, { associationId, id: officialId });
  if (official === null) return null;
  const games = await readOfficialGames(tx, associationId, officialId, options);
  const venueIds = [...new Set(games.map(({ assignment }) => assignment.venueId))];
  const venues = await tx.findBy(Venue, { associationId, id: In(venueIds) });
  const venueById = new Map(venues.map((venue) => [venue.id, venue]));
  const placeIds = [official.homePlaceId, ...venues.map((venue) => venue.placeId)].filter(
    (id) => id !== null,
  );
  const places = await tx.findBy(Place, { associationId, id: In(placeIds) });
  const placeById = new Map(places.map((place) => [place.id, place]));
  const legs = measuredLegs(
    await tx.findBy(TravelLeg, {
      associationId,
      source: 'measured',
      fromPlaceId: In(placeIds),
      toPlaceId: In(placeIds),
    }),
  );
  const placeOf = (id: string | null) => (id === null ? null : (placeById.get(id) ?? null));
  const home = placeOf(official.homePlaceId);
  const told = games.flatMap((game) => {
    const venue = venueById.get(game.assignment.venueId);
    return venue === undefined ? [] : [{ ...game, venue, place: placeOf(venue.placeId) }];
  });
  const journeys = dayJourneys({
    duties: told.filter(({ assignment }) => assignment.endedAt === null).map(journeyDuty),
    home,
    model: association.travelModel,
    legs,
  });
  const duties = told.map((duty) => ({ ...duty, journey: journeys.get(duty.assignment.id) ?? null }));
  return { official, home, duties, legs };
}

function journeyDuty({ assignment, venue, place }: Omit<OfficialDuty, 'journey'>): JourneyDuty {
  return {
    assignmentId: assignment.id,
    venueId: venue.id,
    venueName: venue.name,
    place,
    localDate: localParts(assignment.startsAt, venue.timeZone).date,
    startsAt: assignment.startsAt,
    dutyEndsAt: assignment.dutyEndsAt,
  };
}
