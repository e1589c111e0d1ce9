import { Controller } from '@nestjs/common';
import type { z } from 'zod';
import { Allow } from '../access/allow';
import { CurrentMember, hasRole, type Member } from '../access/member';
import { RequestError } from '../platform/request-error';
import { Tenancy } from '../platform/tenancy';
import { Input, Serve, type InputOf, type OutputOf } from '../web/api/operation';
import { listAvailability, listOfficials, readOfficial, type officialSchema } from './official-schemas';
import { OfficialsService, type OfficialView } from './officials.service';

/** Officials for programs. */
@Controller()
export class OfficialsApi {
  constructor(
    private readonly tenancy: Tenancy,
    private readonly officials: OfficialsService,
  ) {}

  @Serve(listOfficials)
  @Allow('assignor', 'administrator', 'observer')
  async list(
    @CurrentMember() member: Member,
    @Input() { query }: InputOf<typeof listOfficials>,
  ): Promise<OutputOf<typeof listOfficials>> {
    const { associationId } = member;
    const options = { withInactive: query.withInactive === 'true' };
    const views = await this.tenancy.read(associationId, (tx) =>
      this.officials.list(tx, associationId, options),
    );
    return { items: views.map((view) => answerOf(view, member)), total: views.length };
  }

  @Serve(readOfficial)
  @Allow('assignor', 'administrator', 'observer', 'own official')
  async read(
    @CurrentMember() member: Member,
    @Input() { params }: InputOf<typeof readOfficial>,
  ): Promise<OutputOf<typeof readOfficial>> {
    const { associationId } = member;
    const view = await this.tenancy.read(associationId, (tx) =>
      this.officials.get(tx, associationId, params.officialId),
    );
    if (view === null) throw new RequestError('REQUEST.NOT_FOUND');
    return answerOf(view, member);
  }

  @Serve(listAvailability)
  @Allow('assignor', 'administrator', 'own official')
  async availability(
    @CurrentMember() { associationId }: Member,
    @Input() { params }: InputOf<typeof listAvailability>,
  ): Promise<OutputOf<typeof listAvailability>> {
    return this.tenancy.read(associationId, async (tx) => {
      const view = await this.officials.get(tx, associationId, params.officialId);
      if (view === null) throw new RequestError('REQUEST.NOT_FOUND');
      const rules = await this.officials.availabilityRules(tx, associationId, [params.officialId]);
      const items = rules.get(params.officialId) ?? [];
      return { items, total: items.length };
    });
  }
}

/** Whether a member may see how to reach an official, and what only those who answer for them need. */
export function maySeeContact(member: Pick<Member, 'roles' | 'officialId'>, officialId: string): boolean {
  return hasRole(member, 'assignor', 'administrator') || member.officialId === officialId;
}

function answerOf({ official, levelName }: OfficialView, member: Member): z.input<typeof officialSchema> {
  const { maxHomeMinutes, maxGamesPerDay, maxGamesPerSlate, wishedGamesPerSlate } = official;
  const { email, phone, homeAddress, birthDate, guardianName, guardianContact } = official;
  return {
    ...official,
    levelName,
    limits: { maxHomeMinutes, maxGamesPerDay, maxGamesPerSlate, wishedGamesPerSlate },
    contact: maySeeContact(member, official.id)
      ? { email, phone, homeAddress, birthDate, guardianName, guardianContact }
      : null,
  };
}
