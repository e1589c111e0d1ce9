import { Controller } from '@nestjs/common';
import type { z } from 'zod';
import { Allow } from '../access/allow';
import { CurrentMember, type Member } from '../access/member';
import { RequestError } from '../platform/request-error';
import { Tenancy } from '../platform/tenancy';
import { Input, Serve, type InputOf, type OutputOf } from '../web/api/operation';
import { listVenues, readVenue, type venueSchema } from './venue-schemas';
import { VenuesService, type VenueView } from './venues.service';

/** Venues for programs. */
@Controller()
export class VenuesApi {
  constructor(
    private readonly tenancy: Tenancy,
    private readonly venues: VenuesService,
  ) {}

  @Serve(listVenues)
  @Allow('member')
  async list(@CurrentMember() { associationId }: Member): Promise<OutputOf<typeof listVenues>> {
    const views = await this.tenancy.read(associationId, (tx) => this.venues.list(tx, associationId));
    return { items: views.map(answerOf), total: views.length };
  }

  @Serve(readVenue)
  @Allow('member')
  async read(
    @CurrentMember() { associationId }: Member,
    @Input() { params }: InputOf<typeof readVenue>,
  ): Promise<OutputOf<typeof readVenue>> {
    const view = await this.tenancy.read(associationId, (tx) =>
      this.venues.get(tx, associationId, params.venueId),
    );
    if (view === null) throw new RequestError('REQUEST.NOT_FOUND');
    return answerOf(view);
  }
}

function answerOf({ venue, position, courts }: VenueView): z.input<typeof venueSchema> {
  return { ...venue, position, courts: [...courts] };
}
