import type { EntityManager } from 'typeorm';
import type { CostBreakdown } from '../solver';
import { judgeCrews } from './judge-crews';
import { loadSlateRecords } from './load-slate-records';
import type { MappingFault } from './mapping-fault';
import { previewPublication, type PublicationPreview } from './preview-publication';
import { mapSlateProblem } from './slate-problem-mapping';

/** What publishing would tell whom, and what stands against it. */
export interface PublicationReview {
  /** Of the working copy that was looked at; send it back when publishing. */
  readonly version: number;
  readonly preview: PublicationPreview;
  /** Hard rules that the working copy breaks, a sentence each; while there is one, publishing is refused. */
  readonly reasons: readonly string[];
  /** Cost of the working copy, as the solver counts it. */
  readonly cost: CostBreakdown;
  readonly faults: readonly MappingFault[];
}

/** Judges the working copy as it stands, or null where the association has no such slate. */
export async function readReview(
  tx: EntityManager,
  associationId: string,
  slateId: string,
): Promise<PublicationReview | null> {
  const records = await loadSlateRecords(tx, associationId, slateId);
  if (records === null) return null;
  const { problem, faults } = mapSlateProblem(records);
  const cancelled = new Set(records.games.filter(({ status }) => status === 'CANCELLED').map(({ id }) => id));
  const judgement = judgeCrews(
    problem,
    records.seats.filter((seat) => !cancelled.has(seat.gameId)),
  );
  return {
    version: records.slate.version,
    preview: previewPublication(records),
    reasons: judgement.reasons,
    cost: judgement.cost,
    faults,
  };
}
