import { Module } from '@nestjs/common';
import { BriefingPages } from './briefing.pages';
import { BriefingsService } from './briefings.service';

/** The pre-game sheet. */
@Module({ controllers: [BriefingPages], providers: [BriefingsService], exports: [BriefingsService] })
export class BriefingModule {}
