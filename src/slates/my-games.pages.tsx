import { Body, Controller, Get, Inject, Param, Post } from '@nestjs/common';
import { z } from 'zod';
import { Allow } from '../access/allow';
import { Association } from '../access/association.entity';
import { CurrentMember, type Member } from '../access/member';
import { clockToken, type Clock } from '../platform/clock';
import { parseRequest } from '../platform/parse-request';
import { RequestError } from '../platform/request-error';
import { Tenancy } from '../platform/tenancy';
import { seeOther, type PageResult } from '../web/http/answer';
import { myGamesPage } from './my-games.page';
import { readOfficialDuties } from './official-days.query';
import { replyRefusal } from './reply-refusal';
import { ReplyService } from './reply.service';
import { idFrom } from './slate-member';

const replyForm = z.object({
  sequence: z.coerce.number().int().min(0),
  reply: z.enum(['ACCEPTED', 'DECLINED']),
  reason: z.string().max(500).default(''),
});

/** An official's own games and answers. */
@Controller(':slug/my-games')
export class MyGamesPages {
  constructor(
    private readonly tenancy: Tenancy,
    private readonly replies: ReplyService,
    @Inject(clockToken) private readonly clock: Clock,
  ) {}

  @Get()
  @Allow('official')
  list(@CurrentMember() member: Member): Promise<PageResult> {
    return this.show(member);
  }

  @Post(':assignmentId/reply')
  @Allow('official')
  async reply(
    @CurrentMember() member: Member,
    @Param('assignmentId') assignmentId: string,
    @Body() body: unknown,
  ): Promise<PageResult> {
    const { associationId, accountId } = member;
    const outcome = await this.replies.reply({
      associationId,
      accountId,
      officialId: officialOf(member),
      assignmentId: idFrom(assignmentId),
      ...parseRequest(replyForm, body),
    });
    if (outcome.kind === 'not-found') throw new RequestError('REQUEST.NOT_FOUND');
    const refusal = replyRefusal(outcome);
    return refusal === null ? seeOther(`/${member.association.slug}/my-games`) : this.show(member, refusal);
  }

  private async show(member: Member, notice?: string): Promise<PageResult> {
    const { associationId } = member;
    const found = await this.tenancy.read(associationId, async (tx) => {
      const association = await tx.findOneByOrFail(Association, { id: associationId });
      const options = { endingFrom: this.clock.now() };
      const duties = await readOfficialDuties(tx, association, officialOf(member), options);
      return { policy: association.policy, coming: duties?.duties ?? [] };
    });
    return myGamesPage({ ...member.association, ...found, ...(notice === undefined ? {} : { notice }) });
  }
}

function officialOf({ officialId }: Member): string {
  if (officialId === null) throw new RequestError('ACCESS.FORBIDDEN');
  return officialId;
}
