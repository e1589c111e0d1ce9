import { Controller, Get, Inject, Param, Query } from '@nestjs/common';
import { z } from 'zod';
import { Allow } from '../access/allow';
import { CurrentMember, type Member } from '../access/member';
import { addDays, isCalendarDay } from '../platform/calendar-day';
import { clockToken, type Clock } from '../platform/clock';
import { localParts } from '../platform/local-time';
import { RequestError } from '../platform/request-error';
import { Tenancy } from '../platform/tenancy';
import type { PageResult } from '../web/http/answer';
import { gamePage, gamesPage } from './games.page';
import { GamesService } from './games.service';

/** Days that the list shows unless asked otherwise. */
const daysAhead = 14;

/** Games as the competition has them. */
@Controller(':slug/games')
export class GamesPages {
  constructor(
    private readonly tenancy: Tenancy,
    private readonly games: GamesService,
    @Inject(clockToken) private readonly clock: Clock,
  ) {}

  @Get()
  @Allow('assignor', 'administrator', 'observer')
  async list(
    @CurrentMember() { associationId, association }: Member,
    @Query('fromDate') from: unknown,
    @Query('toDate') to: unknown,
  ): Promise<PageResult> {
    const today = localParts(this.clock.now(), association.timeZone).date;
    const fromDate = isDay(from) ? from : today;
    const toDate = isDay(to) ? to : addDays(fromDate, daysAhead);
    const games = await this.tenancy.read(associationId, (tx) =>
      this.games.list(tx, associationId, { fromDate, toDate }),
    );
    return gamesPage({ ...association, fromDate, toDate, games });
  }

  @Get(':gameId')
  @Allow('assignor', 'administrator', 'observer')
  async show(
    @CurrentMember() { associationId, association }: Member,
    @Param('gameId') gameId: string,
  ): Promise<PageResult> {
    if (!z.uuid().safeParse(gameId).success) throw new RequestError('REQUEST.NOT_FOUND');
    const view = await this.tenancy.read(associationId, (tx) => this.games.get(tx, associationId, gameId));
    if (view === null) throw new RequestError('REQUEST.NOT_FOUND');
    return gamePage({ slug: association.slug, view });
  }
}

function isDay(value: unknown): value is string {
  return typeof value === 'string' && isCalendarDay(value);
}
