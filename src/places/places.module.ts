import { Module } from '@nestjs/common';
import { VenuesService } from './venues.service';

/** Venues, courts and the ways between places. */
@Module({ providers: [VenuesService], exports: [VenuesService] })
export class PlacesModule {}
