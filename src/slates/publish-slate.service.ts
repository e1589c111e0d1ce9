import { Inject, Injectable } from '@nestjs/common';
import { randomUUID } from 'node:crypto';
import { In, IsNull, type EntityManager } from 'typeorm';
import { AuditTrail } from '../access/audit-trail';
import { clockToken, type Clock } from '../platform/clock';
import { Tenancy } from '../platform/tenancy';
import { applyPublication, type AppliedChange } from './apply-publication';
import { Assignment } from './assignment.entity';
import { guardObjection, peopleToldElsewhere } from './constraint-refusal';
import { lockSlate } from './lock-slate';
import type { PublicationChanges } from './publication-changes';
import { Publication } from './publication.entity';
import { isNothingToPublish } from './preview-publication';
import { readReview } from './review-publication.query';
import type { SlateActor } from './slate-actor';
import type { Slate } from './slate.entity';
import { queueMessages, reviseFeeds } from './tell-officials';

export interface PublishRequest {
  readonly slateId: string;
  /** The same key never publishes twice; make one for each press of the button. */
  readonly idempotencyKey: string;
  /** Version of the working copy that was looked at; without it, whatever stands there is published. */
  readonly expectedVersion?: number;
}

export type PublishOutcome =
  | {
      readonly kind: 'published';
      readonly publicationId: string;
      /** Counts from 1 within the slate. */
      readonly number: number;
      readonly changes: PublicationChanges;
      /** True when this very request had been carried out before, and nothing was done now. */
      readonly repeated: boolean;
    }
  /** Everybody has been told what stands in the working copy. */
  | { readonly kind: 'unchanged' }
  /** The crews break rules; nobody is told anything. */
  | { readonly kind: 'refused'; readonly reasons: readonly string[] }
  /** Somebody changed the working copy after it was looked at. */
  | { readonly kind: 'changed'; readonly version: number }
  | { readonly kind: 'not-found' };

/** Tells officials what the working copy of a slate says: all of it in one transaction, or nothing. */
@Injectable()
export class PublishSlateService {
  constructor(
    private readonly tenancy: Tenancy,
    private readonly audit: AuditTrail,
    @Inject(clockToken) private readonly clock: Clock,
  ) {}

  async publish(actor: SlateActor, request: PublishRequest): Promise<PublishOutcome> {
    const { associationId } = actor;
    try {
      return await this.tenancy.run(associationId, (tx) => this.publishIn(tx, actor, request), {
        repeatable: true,
      });
    } catch (error) {
      const objection = guardObjection(error);
      if (objection === null) throw error;
      const people = await this.tenancy.read(associationId, (tx) =>
        peopleToldElsewhere(tx, associationId, request.slateId),
      );
      return { kind: 'refused', reasons: people.length > 0 ? people : [objection] };
    }
  }

  private async publishIn(
    tx: EntityManager,
    actor: SlateActor,
    request: PublishRequest,
  ): Promise<PublishOutcome> {
    const { associationId } = actor;
    const { slateId, idempotencyKey, expectedVersion } = request;
    const slate = await lockSlate(tx, associationId, slateId);
    if (slate === null) return { kind: 'not-found' };
    const before = await tx.findOneBy(Publication, { associationId, idempotencyKey });
    if (before !== null) {
      if (before.slateId !== slateId)
        return { kind: 'refused', reasons: ['The idempotency key was used for another slate.'] };
      const { id: publicationId, number, changes } = before;
      return { kind: 'published', publicationId, number, changes, repeated: true };
    }
    if (expectedVersion !== undefined && expectedVersion !== slate.version)
      return { kind: 'changed', version: slate.version };
    const review = await readReview(tx, associationId, slateId);
    if (review === null) return { kind: 'not-found' };
    if (review.reasons.length > 0) return { kind: 'refused', reasons: review.reasons };
    if (isNothingToPublish(review.preview)) return { kind: 'unchanged' };

    const { added, revised, ended } = review.preview;
    const publication = await this.insertPublication(tx, actor, slate, idempotencyKey, {
      added: added.length,
      revised: revised.length,
      ended: ended.length,
    });
    const applied = await applyPublication(tx, review.preview, publication);
    await queueMessages(tx, associationId, applied, publication.publishedAt);
    await reviseFeeds(
      tx,
      associationId,
      await whoSeesIt(tx, associationId, applied),
      publication.publishedAt,
    );
    await this.audit.write(tx, {
      ...actor,
      action: 'slate.published',
      objectKind: 'slate',
      objectId: slateId,
      after: { publicationId: publication.id, number: publication.number, ...publication.changes },
    });
    const { id: publicationId, number, changes } = publication;
    return { kind: 'published', publicationId, number, changes, repeated: false };
  }

  private async insertPublication(
    tx: EntityManager,
    actor: SlateActor,
    slate: Slate,
    idempotencyKey: string,
    changes: PublicationChanges,
  ): Promise<Publication> {
    const { associationId, accountId } = actor;
    const publication = tx.create(Publication, {
      associationId,
      id: randomUUID(),
      slateId: slate.id,
      number: 1 + (await tx.countBy(Publication, { associationId, slateId: slate.id })),
      idempotencyKey,
      proposalId: slate.chosenProposalId,
      changes,
      publishedBy: accountId,
      publishedAt: this.clock.now(),
    });
    await tx.insert(Publication, publication);
    return publication;
  }
}

/** Whose feed looks different now: everybody concerned, and who shares a game with them, since a feed names the partner. */
async function whoSeesIt(
  tx: EntityManager,
  associationId: string,
  applied: readonly AppliedChange[],
): Promise<string[]> {
  const gameIds = [...new Set(applied.map((change) => change.gameId))];
  const crews = await tx.findBy(Assignment, { associationId, gameId: In(gameIds), endedAt: IsNull() });
  return [...applied, ...crews].map(({ officialId }) => officialId);
}
