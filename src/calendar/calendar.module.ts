import { Module } from '@nestjs/common';
import { FeedTokensService } from './feed-tokens.service';
import { FeedPages } from './feed.pages';

/** Officials' own pages about their feeds; the feeds themselves are served beside Nest (`serveFeeds`). */
@Module({ controllers: [FeedPages], providers: [FeedTokensService], exports: [FeedTokensService] })
export class CalendarModule {}
