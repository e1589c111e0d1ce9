import { Module } from '@nestjs/common';
import { AssignmentsApi } from './assignments.api';
import { BuildsApi } from './builds.api';
import { BuildsPages } from './builds.pages';
import { MyGamesPages } from './my-games.pages';
import { SlatesApi } from './slates.api';
import { SlatesModule } from './slates.module';
import { SlatesPages } from './slates.pages';

/** Pages and API of the slates. */
@Module({
  imports: [SlatesModule],
  controllers: [SlatesPages, BuildsPages, MyGamesPages, SlatesApi, BuildsApi, AssignmentsApi],
})
export class SlatesWebModule {}
