import { Inject, Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { AuditTrail } from '../access/audit-trail';
import { clockToken, type Clock } from '../platform/clock';
import { Tenancy } from '../platform/tenancy';
import { Assignment } from './assignment.entity';
import { lockSlate } from './lock-slate';
import { raiseSlateVersion } from './refresh-slate';
import { Seat } from './seat.entity';
import { SlateGame } from './slate-game.entity';
import { reviseFeeds } from './tell-officials';

export interface ReplyRequest {
  readonly associationId: string;
  /** Account of whoever replies; null where a one-click link stands for it. */
  readonly accountId: string | null;
  readonly officialId: string;
  readonly assignmentId: string;
  /** The sequence number that was shown; a reply to anything older is asked for again. */
  readonly sequence: number;
  readonly reply: 'ACCEPTED' | 'DECLINED';
  readonly reason?: string;
}

export type ReplyOutcome =
  | { readonly kind: 'recorded'; readonly reply: 'ACCEPTED' | 'DECLINED' }
  /** The same reply had been given before. */
  | { readonly kind: 'unchanged'; readonly reply: 'ACCEPTED' | 'DECLINED' }
  /** The details have changed since; show them and ask again with this sequence number. */
  | { readonly kind: 'changed'; readonly sequence: number }
  /** The official is no longer assigned. */
  | { readonly kind: 'ended'; readonly reason: NonNullable<Assignment['endReason']> }
  /** The game has begun; talk to the assignor. */
  | { readonly kind: 'too-late' }
  | { readonly kind: 'not-found' };

const reasonCharactersMax = 500;

/**
 * Takes an official's reply. A reply does not raise the sequence number (RFC 5546 section 2.1.4); declining ends the
 * assignment, which cancels its event, and that does. The seat is open again in the working copy then.
 */
@Injectable()
export class ReplyService {
  constructor(
    private readonly tenancy: Tenancy,
    private readonly audit: AuditTrail,
    @Inject(clockToken) private readonly clock: Clock,
  ) {}

  reply(request: ReplyRequest): Promise<ReplyOutcome> {
    return this.tenancy.run(request.associationId, (tx) => this.replyIn(tx, request), { repeatable: true });
  }

  private async replyIn(tx: EntityManager, request: ReplyRequest): Promise<ReplyOutcome> {
    const { associationId, assignmentId: id, officialId, reply } = request;
    const own = { associationId, id, officialId };
    const seen = await tx.findOneBy(Assignment, own);
    if (seen === null) return { kind: 'not-found' };
    // Publishing holds the slate too, so what is read below cannot change before it is written.
    const link = await tx.findOneBy(SlateGame, { associationId, gameId: seen.gameId });
    const slate = link === null ? null : await lockSlate(tx, associationId, link.slateId);
    const assignment = await tx.findOneOrFail(Assignment, {
      where: own,
      lock: { mode: 'pessimistic_write' },
    });
    const { endReason, sequence } = assignment;
    if (endReason === 'declined' && reply === 'DECLINED') return { kind: 'unchanged', reply };
    if (endReason !== null) return { kind: 'ended', reason: endReason };
    if (sequence !== request.sequence) return { kind: 'changed', sequence };
    if (assignment.reply === reply) return { kind: 'unchanged', reply };
    const now = this.clock.now();
    if (now.getTime() >= assignment.startsAt.getTime()) return { kind: 'too-late' };

    await tx.query(
      `update assignment set reply = $3, replied_at = $4, revised_at = $4, reply_reason = $5
        where association_id = $1 and id = $2`,
      [associationId, id, reply, now, (request.reason ?? '').trim().slice(0, reasonCharactersMax)],
    );
    if (reply === 'DECLINED') {
      await tx.query(
        `update assignment set ended_at = $3, end_reason = 'declined', sequence = sequence + 1
          where association_id = $1 and id = $2`,
        [associationId, id, now],
      );
      const { gameId, seat } = assignment;
      const emptied = await tx.update(
        Seat,
        { associationId, gameId, seat, officialId },
        { officialId: null, locked: false, version: () => 'version + 1' },
      );
      if (slate !== null && (emptied.affected ?? 0) > 0) await raiseSlateVersion(tx, slate);
    }
    await reviseFeeds(tx, associationId, await crewOf(tx, assignment), now);
    await this.audit.write(tx, {
      associationId,
      accountId: request.accountId,
      action: reply === 'ACCEPTED' ? 'assignment.accepted' : 'assignment.declined',
      objectKind: 'assignment',
      objectId: id,
      before: { reply: assignment.reply },
      after: { reply },
    });
    return { kind: 'recorded', reply };
  }
}

/** The official and whoever shares the game: both feeds change. */
async function crewOf(tx: EntityManager, assignment: Assignment): Promise<string[]> {
  const { associationId, gameId, officialId } = assignment;
  const crew = await tx.findBy(Assignment, { associationId, gameId });
  return [officialId, ...crew.filter((row) => row.endedAt === null).map((row) => row.officialId)];
}
