import { Controller, Get, Param } from '@nestjs/common';
import { z } from 'zod';
import { Allow } from '../access/allow';
import { Association } from '../access/association.entity';
import { CurrentMember, type Member } from '../access/member';
import { RequestError } from '../platform/request-error';
import { Tenancy } from '../platform/tenancy';
import type { PageResult } from '../web/http/answer';
import { venuePage, venuesPage } from './venues.page';
import { VenuesService } from './venues.service';

/** Venues, for every member. */
@Controller(':slug/venues')
export class VenuesPages {
  constructor(
    private readonly tenancy: Tenancy,
    private readonly venues: VenuesService,
  ) {}

  @Get()
  @Allow('member')
  async list(@CurrentMember() { associationId, association }: Member): Promise<PageResult> {
    const venues = await this.tenancy.read(associationId, (tx) => this.venues.list(tx, associationId));
    return venuesPage({ slug: association.slug, venues });
  }

  @Get(':venueId')
  @Allow('member')
  async show(
    @CurrentMember() { associationId, association }: Member,
    @Param('venueId') venueId: string,
  ): Promise<PageResult> {
    if (!z.uuid().safeParse(venueId).success) throw new RequestError('REQUEST.NOT_FOUND');
    const found = await this.tenancy.read(associationId, async (tx) => {
      const { emergencyNumber } = await tx.findOneByOrFail(Association, { id: associationId });
      return { emergencyNumber, view: await this.venues.get(tx, associationId, venueId) };
    });
    if (found.view === null) throw new RequestError('REQUEST.NOT_FOUND');
    return venuePage({ slug: association.slug, view: found.view, emergencyNumber: found.emergencyNumber });
  }
}
