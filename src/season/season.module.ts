import { Module } from '@nestjs/common';
import { GameReportsService } from './game-reports.service';
import { ObservationsService } from './observations.service';
import { ReflectionsService } from './reflections.service';

const services = [GameReportsService, ReflectionsService, ObservationsService];

/** What is written after a game. */
@Module({ providers: services, exports: services })
export class SeasonModule {}
