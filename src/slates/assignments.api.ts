import { Controller, Inject } from '@nestjs/common';
import { Allow } from '../access/allow';
import type { AssociationPolicy } from '../access/association-policy';
import { Association } from '../access/association.entity';
import { CurrentMember, type Member } from '../access/member';
import { clockToken, type Clock } from '../platform/clock';
import { RequestError } from '../platform/request-error';
import { Tenancy } from '../platform/tenancy';
import { Input, Serve, type InputOf, type OutputOf } from '../web/api/operation';
import { leaveBy } from './day-journeys';
import { readOfficialDuties, type OfficialDuty } from './official-days.query';
import { replyRefusal } from './reply-refusal';
import { ReplyService } from './reply.service';
import { listAssignments, replyToAssignment } from './slate-operations';

/** An official's games and answers, for programs. */
@Controller()
export class AssignmentsApi {
  constructor(
    private readonly tenancy: Tenancy,
    private readonly replies: ReplyService,
    @Inject(clockToken) private readonly clock: Clock,
  ) {}

  @Serve(listAssignments)
  @Allow('own official', 'assignor', 'administrator')
  async list(
    @CurrentMember() { associationId }: Member,
    @Input() { params }: InputOf<typeof listAssignments>,
  ): Promise<OutputOf<typeof listAssignments>> {
    return this.tenancy.read(associationId, async (tx) => {
      const association = await tx.findOneByOrFail(Association, { id: associationId });
      const options = { endingFrom: this.clock.now() };
      const found = await readOfficialDuties(tx, association, params.officialId, options);
      if (found === null) throw new RequestError('REQUEST.NOT_FOUND');
      const items = found.duties.map((duty) => ({
        ...duty.assignment,
        leaveHomeBy: leaveHomeBy(duty, association.policy),
        partner: duty.partner,
        game: duty.game,
      }));
      return { items, total: items.length };
    });
  }

  @Serve(replyToAssignment)
  @Allow('own official')
  async reply(
    @CurrentMember() { associationId, accountId }: Member,
    @Input() { params, body }: InputOf<typeof replyToAssignment>,
  ): Promise<OutputOf<typeof replyToAssignment>> {
    const { officialId, assignmentId } = params;
    const { sequence, reply, reason } = body;
    const outcome = await this.replies.reply({
      associationId,
      accountId,
      officialId,
      assignmentId,
      sequence,
      reply,
      ...(reason === undefined ? {} : { reason }),
    });
    if (outcome.kind === 'not-found') throw new RequestError('REQUEST.NOT_FOUND');
    const refusal = replyRefusal(outcome);
    if (refusal !== null) throw new RequestError('REQUEST.CONFLICT', { detail: refusal });
    return { reply };
  }
}

function leaveHomeBy({ journey, assignment }: OfficialDuty, policy: AssociationPolicy): Date | null {
  if (journey?.kind !== 'from-home') return null;
  const arriveAt = new Date(assignment.startsAt.getTime() - policy.venueArrivalMinutes * 60_000);
  return leaveBy(arriveAt, journey.travel, policy.travelMarginMinutes);
}
