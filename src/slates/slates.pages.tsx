import { Body, Controller, Get, Inject, Param, Post } from '@nestjs/common';
import { randomUUID } from 'node:crypto';
import { z } from 'zod';
import { Allow } from '../access/allow';
import { CurrentMember, hasRole, type Member } from '../access/member';
import { clockToken, type Clock } from '../platform/clock';
import { localParts } from '../platform/local-time';
import { parseRequest } from '../platform/parse-request';
import { RequestError } from '../platform/request-error';
import { Tenancy } from '../platform/tenancy';
import { defaultSeconds } from '../solver';
import { seeOther, type PageResult } from '../web/http/answer';
import { BuildsService } from './builds.service';
import { ChooseProposalService } from './choose-proposal.service';
import { CreateSlateService } from './create-slate.service';
import { readPublicationView } from './publication-view.query';
import { publicationPage } from './publication.page';
import { PublishSlateService } from './publish-slate.service';
import { actorOf, idFrom, mayChangeSlates } from './slate-member';
import { slateListPage, type SlateListProps } from './slate-list.page';
import { readSlateSummaries } from './slate-summary.query';
import { readSlateView } from './slate-view.query';
import { slatePage } from './slate.page';

const newSlateForm = z.object({
  name: z.string().max(200).default(''),
  fromDate: z.string().max(20).default(''),
  toDate: z.string().max(20).default(''),
});
const chooseForm = z.object({ proposalId: z.uuid(), version: z.coerce.number().int() });
const publishForm = z.object({ idempotencyKey: z.uuid(), version: z.coerce.number().int() });

const changedMeanwhile =
  'Somebody changed the slate while you looked at it. This is how it stands now; look again.';

/** The assignor's slates: the list, one of them, choosing a proposal, publishing. */
@Controller(':slug')
export class SlatesPages {
  constructor(
    private readonly tenancy: Tenancy,
    private readonly createSlate: CreateSlateService,
    private readonly builds: BuildsService,
    private readonly chooseProposal: ChooseProposalService,
    private readonly publishSlate: PublishSlateService,
    @Inject(clockToken) private readonly clock: Clock,
  ) {}

  @Get()
  @Allow('member')
  async home(@CurrentMember() member: Member): Promise<PageResult> {
    if (!hasRole(member, 'assignor', 'administrator', 'observer')) {
      return seeOther(`/${member.association.slug}/${member.officialId === null ? 'venues' : 'my-games'}`);
    }
    return this.list(member, {});
  }

  @Post('slates')
  @Allow('assignor', 'administrator')
  async create(@CurrentMember() member: Member, @Body() body: unknown): Promise<PageResult> {
    const typed = parseRequest(newSlateForm, body);
    const outcome = await this.createSlate.create(actorOf(member), typed);
    switch (outcome.kind) {
      case 'created':
        return seeOther(`/${member.association.slug}/slates/${outcome.slateId}`);
      case 'name-taken':
        return this.list(member, { typed, errors: { name: 'There is a slate of this name. Pick another.' } });
      case 'refused': {
        const errors = Object.fromEntries(outcome.faults.map(({ field, message }) => [field, message]));
        return this.list(member, { typed, errors });
      }
    }
  }

  @Get('slates/:slateId')
  @Allow('assignor', 'administrator', 'observer')
  show(@CurrentMember() member: Member, @Param('slateId') slateId: string): Promise<PageResult> {
    return this.one(member, slateId);
  }

  @Post('slates/:slateId/chosen-proposal')
  @Allow('assignor', 'administrator')
  async choose(
    @CurrentMember() member: Member,
    @Param('slateId') slateId: string,
    @Body() body: unknown,
  ): Promise<PageResult> {
    const { proposalId, version } = parseRequest(chooseForm, body);
    const request = { slateId: idFrom(slateId), proposalId, expectedVersion: version };
    const outcome = await this.chooseProposal.choose(actorOf(member), request);
    switch (outcome.kind) {
      case 'chosen':
        return seeOther(`/${member.association.slug}/slates/${slateId}`);
      case 'stale':
        return this.one(member, slateId, [
          'So much has changed since this proposal was made that it breaks rules. Build again.',
          ...outcome.reasons,
        ]);
      case 'changed':
        return this.one(member, slateId, [changedMeanwhile]);
      case 'not-found':
        throw new RequestError('REQUEST.NOT_FOUND');
    }
  }

  @Get('slates/:slateId/publication')
  @Allow('assignor', 'administrator')
  preview(@CurrentMember() member: Member, @Param('slateId') slateId: string): Promise<PageResult> {
    return this.publication(member, slateId);
  }

  @Post('slates/:slateId/publication')
  @Allow('assignor', 'administrator')
  async publish(
    @CurrentMember() member: Member,
    @Param('slateId') slateId: string,
    @Body() body: unknown,
  ): Promise<PageResult> {
    const { idempotencyKey, version } = parseRequest(publishForm, body);
    const request = { slateId: idFrom(slateId), idempotencyKey, expectedVersion: version };
    const outcome = await this.publishSlate.publish(actorOf(member), request);
    switch (outcome.kind) {
      case 'published':
      case 'unchanged':
        return seeOther(`/${member.association.slug}/slates/${slateId}`);
      case 'refused':
        return this.publication(member, slateId, outcome.reasons);
      case 'changed':
        return this.publication(member, slateId, [changedMeanwhile]);
      case 'not-found':
        throw new RequestError('REQUEST.NOT_FOUND');
    }
  }

  private async list(member: Member, form: Pick<SlateListProps, 'typed' | 'errors'>): Promise<PageResult> {
    const { slug, language, timeZone } = member.association;
    const { associationId } = member;
    return slateListPage({
      slug,
      language,
      today: localParts(this.clock.now(), timeZone).date,
      slates: await this.tenancy.read(associationId, (tx) => readSlateSummaries(tx, associationId)),
      canChange: mayChangeSlates(member),
      ...form,
    });
  }

  private async one(member: Member, slateId: string, refusals?: readonly string[]): Promise<PageResult> {
    const { associationId } = member;
    const id = idFrom(slateId);
    const view = await this.tenancy.read(associationId, (tx) => readSlateView(tx, associationId, id));
    if (view === null) throw new RequestError('REQUEST.NOT_FOUND');
    return slatePage({
      ...member.association,
      view,
      builds: await this.builds.ofSlate(associationId, id),
      canChange: mayChangeSlates(member),
      seconds: defaultSeconds(view.games.length),
      ...(refusals === undefined ? {} : { refusals }),
    });
  }

  private async publication(
    member: Member,
    slateId: string,
    refusals?: readonly string[],
  ): Promise<PageResult> {
    const { associationId } = member;
    const view = await this.tenancy.read(associationId, (tx) =>
      readPublicationView(tx, associationId, idFrom(slateId)),
    );
    if (view === null) throw new RequestError('REQUEST.NOT_FOUND');
    return publicationPage({
      ...member.association,
      view,
      idempotencyKey: randomUUID(),
      ...(refusals === undefined ? {} : { refusals }),
    });
  }
}
