import { Controller } from '@nestjs/common';
import { z } from 'zod';
import { Allow } from '../access/allow';
import { CurrentMember, type Member } from '../access/member';
import { RequestError } from '../platform/request-error';
import { Tenancy } from '../platform/tenancy';
import { Official } from '../roster/official.entity';
import { idField, instantField, listOf } from '../web/api/fields';
import { defineOperation, Input, Serve, type InputOf, type OutputOf } from '../web/api/operation';
import { ServiceAddress } from '../web/http/service-address';
import { FeedTokensService, type FeedOwner, type NewFeedOutcome } from './feed-tokens.service';

const tag = 'Calendar feeds';
const feeds = '/api/v1/associations/:slug/officials/:officialId/feeds';
const params = z.object({ slug: z.string(), officialId: idField });

const feedSchema = z.object({
  id: idField,
  name: z.string(),
  createdAt: instantField,
  lastUsedAt: instantField.nullable(),
  lastUserAgent: z.string(),
});

const newFeedSchema = z.object({
  id: idField,
  address: z.string().describe('In this answer only. Whoever has it can read the games.'),
});

const listFeeds = defineOperation({
  id: 'listFeeds',
  method: 'GET',
  path: feeds,
  tag,
  summary: 'Live feed addresses of an official, without their secrets',
  params,
  response: listOf(feedSchema),
});

const makeFeed = defineOperation({
  id: 'makeFeed',
  method: 'POST',
  path: feeds,
  tag,
  summary: 'Make a feed address',
  params,
  body: z.object({ name: z.string().trim().max(60).default('') }),
  response: newFeedSchema,
  status: 201,
  errors: ['REQUEST.CONFLICT'],
});

const rotateFeed = defineOperation({
  id: 'rotateFeed',
  method: 'POST',
  path: `${feeds}/:feedId/rotate`,
  tag,
  summary: 'End a feed address and make one of the same name',
  params: params.extend({ feedId: idField }),
  response: newFeedSchema,
  status: 201,
  errors: ['REQUEST.CONFLICT'],
});

const revokeFeed = defineOperation({
  id: 'revokeFeed',
  method: 'DELETE',
  path: `${feeds}/:feedId`,
  tag,
  summary: 'End a feed address',
  params: params.extend({ feedId: idField }),
  response: null,
});

/** Feed addresses for programs; the feeds themselves stand outside the API. */
@Controller()
export class FeedsApi {
  constructor(
    private readonly tenancy: Tenancy,
    private readonly tokens: FeedTokensService,
    private readonly address: ServiceAddress,
  ) {}

  @Serve(listFeeds)
  @Allow('own official', 'administrator')
  async list(
    @CurrentMember() member: Member,
    @Input() { params: { officialId } }: InputOf<typeof listFeeds>,
  ): Promise<OutputOf<typeof listFeeds>> {
    const { associationId } = member;
    const isKnown = await this.tenancy.read(associationId, (tx) =>
      tx.existsBy(Official, { associationId, id: officialId }),
    );
    if (!isKnown) throw new RequestError('REQUEST.NOT_FOUND');
    const items = await this.tokens.list(ownerOf(member, officialId));
    return { items, total: items.length };
  }

  @Serve(makeFeed)
  @Allow('own official')
  async make(
    @CurrentMember() member: Member,
    @Input() { params: { officialId }, body }: InputOf<typeof makeFeed>,
  ): Promise<OutputOf<typeof makeFeed>> {
    return this.answer(await this.tokens.make(ownerOf(member, officialId), body.name));
  }

  @Serve(rotateFeed)
  @Allow('own official')
  async rotate(
    @CurrentMember() member: Member,
    @Input() { params: { officialId, feedId } }: InputOf<typeof rotateFeed>,
  ): Promise<OutputOf<typeof rotateFeed>> {
    const outcome = await this.tokens.rotate(ownerOf(member, officialId), feedId);
    if (outcome === null) throw new RequestError('REQUEST.NOT_FOUND');
    return this.answer(outcome);
  }

  @Serve(revokeFeed)
  @Allow('own official', 'administrator')
  async revoke(
    @CurrentMember() member: Member,
    @Input() { params: { officialId, feedId } }: InputOf<typeof revokeFeed>,
  ): Promise<void> {
    if (!(await this.tokens.revoke(ownerOf(member, officialId), feedId))) {
      throw new RequestError('REQUEST.NOT_FOUND');
    }
  }

  private answer(outcome: NewFeedOutcome): z.input<typeof newFeedSchema> {
    if (outcome.kind === 'too-many') {
      const detail = `There are ${outcome.max} live addresses already; end one that is no longer used.`;
      throw new RequestError('REQUEST.CONFLICT', { detail });
    }
    return { id: outcome.id, address: `${this.address.url()}/cal/${outcome.secret}.ics` };
  }
}

function ownerOf({ associationId, accountId }: Member, officialId: string): FeedOwner {
  return { associationId, officialId, accountId };
}
