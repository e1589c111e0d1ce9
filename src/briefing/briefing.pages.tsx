import { Controller, Get, Param } from '@nestjs/common';
import { z } from 'zod';
import { Allow } from '../access/allow';
import { CurrentMember, type Member } from '../access/member';
import { RequestError } from '../platform/request-error';
import { page, type PageResult } from '../web/http/answer';
import { BriefingPage } from './briefing.page';
import { BriefingsService } from './briefings.service';

const gameIdForm = z.uuid();

/** The pre-game sheet, for the crew of the game, observers and assignors. */
@Controller(':slug/games/:gameId/briefing')
export class BriefingPages {
  constructor(private readonly briefings: BriefingsService) {}

  @Get()
  @Allow('member')
  async show(@CurrentMember() member: Member, @Param('gameId') gameId: string): Promise<PageResult> {
    if (!gameIdForm.safeParse(gameId).success) throw new RequestError('REQUEST.NOT_FOUND');
    const outcome = await this.briefings.forMember(member, gameId);
    switch (outcome.kind) {
      case 'not-found':
        throw new RequestError('REQUEST.NOT_FOUND');
      case 'not-yours':
        throw new RequestError('ACCESS.FORBIDDEN');
      case 'briefing':
        return page({
          title: `Briefing: ${outcome.briefing.title}`,
          body: <BriefingPage briefing={outcome.briefing} />,
        });
    }
  }
}
