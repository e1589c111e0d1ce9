import { Injectable } from '@nestjs/common';
import { In, type EntityManager } from 'typeorm';
import { Court } from './court.entity';
import { Place } from './place.entity';
import type { Position } from './travel-estimate';
import { Venue } from './venue.entity';

/** A venue with what belongs to it. */
export interface VenueView {
  readonly venue: Venue;
  /** Null while nobody has entered one. */
  readonly position: Position | null;
  /** By name. */
  readonly courts: readonly Pick<Court, 'id' | 'name'>[];
}

/** Reads venues. */
@Injectable()
export class VenuesService {
  /** Every venue by name; those no longer in use only on request. */
  async list(
    tx: EntityManager,
    associationId: string,
    options: { readonly withInactive?: boolean } = {},
  ): Promise<VenueView[]> {
    const active = options.withInactive === true ? {} : { active: true };
    const venues = await tx.find(Venue, {
      where: { associationId, ...active },
      order: { name: 'asc', id: 'asc' },
    });
    return this.viewsOf(tx, associationId, venues);
  }

  async get(tx: EntityManager, associationId: string, id: string): Promise<VenueView | null> {
    const venue = await tx.findOneBy(Venue, { associationId, id });
    const [view] = venue === null ? [] : await this.viewsOf(tx, associationId, [venue]);
    return view ?? null;
  }

  private async viewsOf(
    tx: EntityManager,
    associationId: string,
    venues: readonly Venue[],
  ): Promise<VenueView[]> {
    const placeIds = venues.flatMap(({ placeId }) => (placeId === null ? [] : [placeId]));
    const places = await tx.findBy(Place, { associationId, id: In(placeIds) });
    const placeById = new Map(places.map((place) => [place.id, place]));
    const courts = await tx.find(Court, {
      where: { associationId, venueId: In(venues.map(({ id }) => id)) },
      order: { name: 'asc' },
    });
    return venues.map((venue) => {
      const place = venue.placeId === null ? undefined : placeById.get(venue.placeId);
      return {
        venue,
        position: place === undefined ? null : { latitude: place.latitude, longitude: place.longitude },
        courts: courts.filter(({ venueId }) => venueId === venue.id).map(({ id, name }) => ({ id, name })),
      };
    });
  }
}
