import { Injectable } from '@nestjs/common';
import { IsNull } from 'typeorm';
import { Association } from '../access/association.entity';
import { hasRole, type Member } from '../access/member';
import { Game } from '../games/game.entity';
import { Tenancy } from '../platform/tenancy';
import { Assignment } from '../slates/assignment.entity';
import { briefing } from './briefing';
import type { Briefing } from './briefing-document';
import { readBriefingInput, type BriefingReader } from './read-briefing-input';

export type BriefingOutcome =
  | { readonly kind: 'briefing'; readonly briefing: Briefing }
  /** The member is neither of the crew nor an observer nor an assignor. */
  | { readonly kind: 'not-yours' }
  | { readonly kind: 'not-found' };

/** Makes the briefing of a game for whoever may read it. */
@Injectable()
export class BriefingsService {
  constructor(private readonly tenancy: Tenancy) {}

  async forMember(
    member: Pick<Member, 'associationId' | 'officialId' | 'roles'>,
    gameId: string,
  ): Promise<BriefingOutcome> {
    const { associationId, officialId } = member;
    return this.tenancy.read(associationId, async (tx) => {
      if (!(await tx.existsBy(Game, { associationId, id: gameId }))) return { kind: 'not-found' };
      const isCrew =
        officialId !== null &&
        (await tx.existsBy(Assignment, { associationId, gameId, officialId, endedAt: IsNull() }));
      const reader = readerOf(member, isCrew);
      if (reader === null) return { kind: 'not-yours' };
      const association = await tx.findOneByOrFail(Association, { id: associationId });
      const input = await readBriefingInput(tx, { association, gameId, reader });
      return input === null ? { kind: 'not-found' } : { kind: 'briefing', briefing: briefing(input) };
    });
  }

  /**
   * By the game's number, with everything that an assignor sees; for the operator's own terminal.
   *
   * @returns null where the association has no such game
   */
  async byNumber(associationId: string, gameNumber: string): Promise<Briefing | null> {
    return this.tenancy.read(associationId, async (tx) => {
      const game = await tx.findOneBy(Game, { associationId, number: gameNumber });
      if (game === null) return null;
      const association = await tx.findOneByOrFail(Association, { id: associationId });
      const input = await readBriefingInput(tx, {
        association,
        gameId: game.id,
        reader: { kind: 'assignor' },
      });
      return input === null ? null : briefing(input);
    });
  }
}

/** The strongest of a member's ways to read a briefing, or null when there is none. */
function readerOf(member: Pick<Member, 'officialId' | 'roles'>, isCrew: boolean): BriefingReader | null {
  if (hasRole(member, 'assignor')) return { kind: 'assignor' };
  if (isCrew && member.officialId !== null) return { kind: 'crew', officialId: member.officialId };
  return hasRole(member, 'observer') ? { kind: 'observer' } : null;
}
