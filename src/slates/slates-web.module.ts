import { Module } from '@nestjs/common';
import { BuildsPages } from './builds.pages';
import { MyGamesPages } from './my-games.pages';
import { SlatesModule } from './slates.module';
import { SlatesPages } from './slates.pages';

/** Pages and API of the slates. */
@Module({ imports: [SlatesModule], controllers: [SlatesPages, BuildsPages, MyGamesPages] })
export class SlatesWebModule {}
