import type { EntityManager } from 'typeorm';
import { Association } from '../access/association.entity';
import { readReview, type PublicationReview } from './review-publication.query';
import { readSlateCrews, type CrewGame } from './slate-crews.query';
import {
  readProposalFigures,
  readSlateSummaries,
  type ProposalFigures,
  type SlateSummary,
} from './slate-summary.query';
import { Proposal } from './proposal.entity';
import { Slate } from './slate.entity';

/** One slate with everything that its page shows. */
export interface SlateView {
  readonly summary: SlateSummary;
  readonly games: readonly CrewGame[];
  readonly review: PublicationReview;
  /** Latest first. */
  readonly proposals: readonly ProposalFigures[];
  /** Of all tours, home to home; null where driving has no weight, as the cost then does not tell. */
  readonly kilometres: number | null;
  /** What a legal slate must cost at least; null when nothing is proven of the crews as they stand. */
  readonly bound: number | null;
}

/** Reads a slate for its page, or null where the association has none of that id. */
export async function readSlateView(
  tx: EntityManager,
  associationId: string,
  slateId: string,
): Promise<SlateView | null> {
  const [summary] = await readSlateSummaries(tx, associationId, slateId);
  const crews = await readSlateCrews(tx, associationId, slateId);
  const review = await readReview(tx, associationId, slateId);
  if (summary === undefined || crews === null || review === null) return null;
  const { weights } = await tx.findOneByOrFail(Slate, { associationId, id: slateId });
  const association = await tx.findOneByOrFail(Association, { id: associationId });
  const { travelPerKm } = weights ?? association.weights;
  return {
    summary,
    games: crews.games,
    review,
    proposals: await readProposalList(tx, associationId, slateId),
    kilometres: travelPerKm === 0 ? null : review.cost.travel / travelPerKm,
    bound: provenFor(summary, review),
  };
}

/** Figures of a slate's proposals, latest first. */
export async function readProposalList(
  tx: EntityManager,
  associationId: string,
  slateId: string,
): Promise<ProposalFigures[]> {
  const ids = await tx.find(Proposal, {
    select: { id: true },
    where: { associationId, slateId },
    order: { createdAt: 'DESC' },
  });
  const figures = await readProposalFigures(
    tx,
    associationId,
    ids.map(({ id }) => id),
  );
  return ids.flatMap(({ id }) => figures.get(id) ?? []);
}

/** A bound holds for the problem it was proven for; crews that cost something else now are no answer to that problem any more. */
function provenFor({ chosen }: SlateSummary, { cost }: PublicationReview): number | null {
  if (chosen === null || chosen.bound === null) return null;
  const isSame = Math.abs(chosen.totalCost - cost.total) <= 1e-6 * Math.max(1, Math.abs(cost.total));
  return isSame ? chosen.bound : null;
}
