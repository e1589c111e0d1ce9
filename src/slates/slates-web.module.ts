import { Module } from '@nestjs/common';
import { GamesModule } from '../games/games.module';
import { ImportsService } from '../games/imports/imports.service';
import { AssignmentsApi } from './assignments.api';
import { BuildsApi } from './builds.api';
import { BuildsPages } from './builds.pages';
import { crewsKind } from './import-crews';
import { MyGamesPages } from './my-games.pages';
import { SlatesApi } from './slates.api';
import { SlatesModule } from './slates.module';
import { SlatesPages } from './slates.pages';

/** Pages and API of the slates, and past crews among the lists that can be brought in. */
@Module({
  imports: [SlatesModule, GamesModule],
  controllers: [SlatesPages, BuildsPages, MyGamesPages, SlatesApi, BuildsApi, AssignmentsApi],
})
export class SlatesWebModule {
  constructor(imports: ImportsService) {
    imports.register(crewsKind);
  }
}
