import { Module } from '@nestjs/common';
import { OfficialsApi } from './officials.api';
import { OfficialsPages } from './officials.pages';
import { RosterModule } from './roster.module';

/** Pages and API of the roster. */
@Module({ imports: [RosterModule], controllers: [OfficialsPages, OfficialsApi] })
export class RosterWebModule {}
