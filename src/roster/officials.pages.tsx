import { Controller, Get, Inject, Param, Query } from '@nestjs/common';
import { z } from 'zod';
import { Allow } from '../access/allow';
import { Association } from '../access/association.entity';
import { CurrentMember, type Member } from '../access/member';
import { clockToken, type Clock } from '../platform/clock';
import { localParts } from '../platform/local-time';
import { RequestError } from '../platform/request-error';
import { Tenancy } from '../platform/tenancy';
import type { PageResult } from '../web/http/answer';
import { maySeeContact } from './officials.api';
import { officialPage, officialsPage } from './officials.page';
import { OfficialsService, type OfficialView } from './officials.service';
import { isMinorOn } from './minors';

/** The roster. */
@Controller(':slug/officials')
export class OfficialsPages {
  constructor(
    private readonly tenancy: Tenancy,
    private readonly officials: OfficialsService,
    @Inject(clockToken) private readonly clock: Clock,
  ) {}

  @Get()
  @Allow('assignor', 'administrator', 'observer')
  async list(
    @CurrentMember() { associationId, association }: Member,
    @Query('search') search: unknown,
  ): Promise<PageResult> {
    const all = await this.tenancy.read(associationId, (tx) => this.officials.list(tx, associationId));
    const text = typeof search === 'string' ? search.trim().slice(0, 100) : '';
    return officialsPage({
      slug: association.slug,
      officials: all.filter((view) => matches(view, text)),
      search: text,
      total: all.length,
    });
  }

  @Get(':officialId')
  @Allow('assignor', 'administrator', 'observer', 'own official')
  async show(@CurrentMember() member: Member, @Param('officialId') officialId: string): Promise<PageResult> {
    if (!z.uuid().safeParse(officialId).success) throw new RequestError('REQUEST.NOT_FOUND');
    const { associationId, association } = member;
    const found = await this.tenancy.read(associationId, async (tx) => {
      const { policy } = await tx.findOneByOrFail(Association, { id: associationId });
      const rules = await this.officials.availabilityRules(tx, associationId, [officialId]);
      const view = await this.officials.get(tx, associationId, officialId);
      return { policy, availability: rules.get(officialId) ?? [], view };
    });
    if (found.view === null) throw new RequestError('REQUEST.NOT_FOUND');
    const today = localParts(this.clock.now(), association.timeZone).date;
    return officialPage({
      ...association,
      view: found.view,
      isMinor: isMinorOn(found.view.official.birthDate, today, found.policy.adultAge),
      withContact: maySeeContact(member, officialId),
      availability: found.availability,
    });
  }
}

/** Whether every word of a search stands in the name or number. */
function matches({ official }: OfficialView, search: string): boolean {
  const text = `${official.givenName} ${official.familyName} ${official.number}`.toLowerCase();
  return search
    .toLowerCase()
    .split(/\s+/)
    .every((word) => text.includes(word));
}
