import { Module } from '@nestjs/common';
import { DivisionsService } from './divisions.service';
import { GamesService } from './games.service';
import { ImportsService } from './imports/imports.service';
import { TeamsService } from './teams.service';

const services = [DivisionsService, TeamsService, GamesService, ImportsService];

/** Divisions, teams and games, and bringing lists in. */
@Module({ providers: services, exports: services })
export class GamesModule {}
