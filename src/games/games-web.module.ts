import { Module } from '@nestjs/common';
import { GamesApi } from './games.api';
import { GamesModule } from './games.module';
import { GamesPages } from './games.pages';
import { ImportsApi } from './imports.api';
import { ImportsPages } from './imports.pages';

/** Pages and API of the games. */
@Module({ imports: [GamesModule], controllers: [GamesPages, GamesApi, ImportsPages, ImportsApi] })
export class GamesWebModule {}
