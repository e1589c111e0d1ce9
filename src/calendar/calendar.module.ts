import { Module } from '@nestjs/common';
import { FeedTokensService } from './feed-tokens.service';
import { FeedPages } from './feed.pages';
import { FeedsApi } from './feeds.api';

/** Officials' own pages about their feeds; the feeds themselves are served beside Nest (`serveFeeds`). */
@Module({ controllers: [FeedPages, FeedsApi], providers: [FeedTokensService], exports: [FeedTokensService] })
export class CalendarModule {}
