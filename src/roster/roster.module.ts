import { Module } from '@nestjs/common';
import { OfficialsService } from './officials.service';

/** Officials and when they are free. */
@Module({ providers: [OfficialsService], exports: [OfficialsService] })
export class RosterModule {}
