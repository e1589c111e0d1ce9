import { Module } from '@nestjs/common';
import { PlacesModule } from './places.module';
import { VenuesApi } from './venues.api';
import { VenuesPages } from './venues.pages';

/** Pages and API of the places. */
@Module({ imports: [PlacesModule], controllers: [VenuesPages, VenuesApi] })
export class PlacesWebModule {}
