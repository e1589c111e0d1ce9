import { Body, Controller, Get, Param, Post } from '@nestjs/common';
import { z } from 'zod';
import { Allow } from '../access/allow';
import { CurrentMember, type Member } from '../access/member';
import { parseRequest } from '../platform/parse-request';
import { RequestError } from '../platform/request-error';
import { page, seeOther, type PageResult } from '../web/http/answer';
import { ServiceAddress } from '../web/http/service-address';
import { FeedAddressesPage, type NewAddress } from './feed-addresses.page';
import { FeedTokensService, type FeedOwner, type NewFeedOutcome } from './feed-tokens.service';

const newFeedForm = z.object({ name: z.string().trim().max(60).default('') });
const idForm = z.uuid();

/** An official's own calendar addresses. A new one is shown in the answer to the form that made it, and never again. */
@Controller(':slug/my-calendar')
export class FeedPages {
  constructor(
    private readonly tokens: FeedTokensService,
    private readonly address: ServiceAddress,
  ) {}

  @Get()
  @Allow('official')
  async list(@CurrentMember() member: Member): Promise<PageResult> {
    return this.show(member, null);
  }

  @Post()
  @Allow('official')
  async make(@CurrentMember() member: Member, @Body() body: unknown): Promise<PageResult> {
    const { name } = parseRequest(newFeedForm, body);
    return this.show(member, await this.tokens.make(ownerOf(member), name));
  }

  @Post(':id/revoke')
  @Allow('official')
  async revoke(@CurrentMember() member: Member, @Param('id') id: string): Promise<PageResult> {
    if (!idForm.safeParse(id).success || !(await this.tokens.revoke(ownerOf(member), id))) {
      throw new RequestError('REQUEST.NOT_FOUND');
    }
    return seeOther(`/${member.association.slug}/my-calendar`);
  }

  @Post(':id/rotate')
  @Allow('official')
  async rotate(@CurrentMember() member: Member, @Param('id') id: string): Promise<PageResult> {
    const made = idForm.safeParse(id).success ? await this.tokens.rotate(ownerOf(member), id) : null;
    if (made === null) throw new RequestError('REQUEST.NOT_FOUND');
    return this.show(member, made);
  }

  private async show(member: Member, outcome: NewFeedOutcome | null): Promise<PageResult> {
    const addresses = await this.tokens.list(ownerOf(member));
    return page({
      title: 'My calendar',
      status: outcome?.kind === 'too-many' ? 409 : 200,
      body: (
        <FeedAddressesPage
          path={`/${member.association.slug}/my-calendar`}
          zone={member.association.timeZone}
          addresses={addresses}
          made={outcome?.kind === 'made' ? newAddress(this.address.url(), outcome.secret) : null}
          refusedAt={outcome?.kind === 'too-many' ? outcome.max : null}
        />
      ),
    });
  }
}

/** The same address as browsers and as calendar programs know it. */
function newAddress(serviceUrl: string, secret: string): NewAddress {
  const address = `${serviceUrl}/cal/${secret}.ics`;
  return { address, subscribe: address.replace(/^https?:/, 'webcal:') };
}

function ownerOf({ associationId, officialId, accountId }: Member): FeedOwner {
  if (officialId === null) throw new RequestError('ACCESS.FORBIDDEN');
  return { associationId, officialId, accountId };
}
