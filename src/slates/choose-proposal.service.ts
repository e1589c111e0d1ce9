import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { AuditTrail } from '../access/audit-trail';
import { Tenancy } from '../platform/tenancy';
import { judgeCrews, type CrewsToJudge } from './judge-crews';
import { loadSlateRecords } from './load-slate-records';
import { lockSlate } from './lock-slate';
import { crewsOfProposal, gamesMovedSince } from './proposal-crews';
import { Proposal } from './proposal.entity';
import { raiseSlateVersion } from './refresh-slate';
import { Seat } from './seat.entity';
import type { SlateActor } from './slate-actor';
import { mapSlateProblem } from './slate-problem-mapping';
import { Slate } from './slate.entity';

export interface ChooseRequest {
  readonly slateId: string;
  readonly proposalId: string;
  /** Version of the working copy that was looked at; without it, whatever stands there is replaced. */
  readonly expectedVersion?: number;
}

export type ChooseOutcome =
  | {
      readonly kind: 'chosen';
      readonly version: number;
      /** Seats that have another official now, or none. */
      readonly seatsChanged: number;
      /** Numbers of games that came or moved after the proposal was made; look at these by hand or build again. */
      readonly gamesSince: readonly string[];
    }
  /** So much has changed since the proposal was made that it breaks rules; build again. */
  | { readonly kind: 'stale'; readonly reasons: readonly string[] }
  /** Somebody changed the working copy after it was looked at. */
  | { readonly kind: 'changed'; readonly version: number }
  | { readonly kind: 'not-found' };

/** Takes a proposal into the working copy. Nobody is told anything by it. */
@Injectable()
export class ChooseProposalService {
  constructor(
    private readonly tenancy: Tenancy,
    private readonly audit: AuditTrail,
  ) {}

  choose(actor: SlateActor, request: ChooseRequest): Promise<ChooseOutcome> {
    return this.tenancy.run(actor.associationId, (tx) => this.chooseIn(tx, actor, request), {
      repeatable: true,
    });
  }

  private async chooseIn(
    tx: EntityManager,
    actor: SlateActor,
    { slateId, proposalId, expectedVersion }: ChooseRequest,
  ): Promise<ChooseOutcome> {
    const { associationId } = actor;
    const slate = await lockSlate(tx, associationId, slateId);
    const proposal = await tx.findOneBy(Proposal, { associationId, id: proposalId, slateId });
    if (slate === null || proposal === null) return { kind: 'not-found' };
    if (expectedVersion !== undefined && expectedVersion !== slate.version)
      return { kind: 'changed', version: slate.version };
    const records = await loadSlateRecords(tx, associationId, slateId);
    if (records === null) return { kind: 'not-found' };
    const { problem } = mapSlateProblem(records);
    const crews = crewsOfProposal(proposal.answer, problem, records.seats);
    const { reasons } = judgeCrews(problem, crews);
    if (reasons.length > 0) return { kind: 'stale', reasons };

    const seatsChanged = await this.storeSeats(tx, associationId, records.seats, crews);
    const isNew = slate.chosenProposalId !== proposalId;
    if (isNew) {
      await tx.update(Slate, { associationId, id: slateId }, { chosenProposalId: proposalId });
    }
    if (isNew || seatsChanged > 0) {
      await raiseSlateVersion(tx, slate);
      await this.audit.write(tx, {
        ...actor,
        action: 'proposal.chosen',
        objectKind: 'slate',
        objectId: slateId,
        before: { proposalId: slate.chosenProposalId },
        after: { proposalId, seatsChanged },
      });
    }
    const gamesSince = gamesMovedSince(proposal.problem, problem);
    return { kind: 'chosen', version: slate.version, seatsChanged, gamesSince };
  }

  /** Empties the seats concerned before it fills them: two people may change places within a game. */
  private async storeSeats(
    tx: EntityManager,
    associationId: string,
    seats: readonly Pick<Seat, 'gameId' | 'seat' | 'officialId'>[],
    crews: readonly CrewsToJudge[],
  ): Promise<number> {
    const changed = crews.filter((crew) => {
      const row = seats.find((seat) => seat.gameId === crew.gameId && seat.seat === crew.seat);
      return row !== undefined && row.officialId !== crew.officialId;
    });
    for (const officials of ['emptied', 'filled'] as const) {
      for (const { gameId, seat, officialId } of changed) {
        if (officials === 'filled' && officialId === null) continue;
        await tx.query(
          `update seat set official_id = $4, version = version + 1
            where association_id = $1 and game_id = $2 and seat = $3`,
          [associationId, gameId, seat, officials === 'emptied' ? null : officialId],
        );
      }
    }
    return changed.length;
  }
}
