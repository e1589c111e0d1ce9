import { randomUUID } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import { Assignment } from './assignment.entity';
import type { PublicationPreview } from './preview-publication';

/** What happened to one assignment, for telling the official. */
export interface AppliedChange {
  readonly assignmentId: string;
  readonly sequence: number;
  readonly officialId: string;
  readonly gameId: string;
  readonly kind: 'assigned' | 'changed' | 'ended';
}

/**
 * Brings the assignments in line with a preview. New people get a new calendar UID; a sequence number rises
 * inside the database's own update, so that no two changes can ever share one; who is asked again has not
 * replied yet.
 *
 * @throws the database's error when a person would be in two places: its constraints have the last word
 */
export async function applyPublication(
  tx: EntityManager,
  preview: PublicationPreview,
  publication: { readonly associationId: string; readonly id: string; readonly publishedAt: Date },
): Promise<AppliedChange[]> {
  const { associationId, id: publicationId, publishedAt: now } = publication;
  const applied: AppliedChange[] = [];
  for (const { assignmentId, reason, officialId, gameId } of preview.ended) {
    const sequence = await raiseSequence(tx, associationId, assignmentId, {
      sql: `ended_at = $3, end_reason = $4, revised_at = $3`,
      values: [now, reason],
    });
    applied.push({ assignmentId, sequence, officialId, gameId, kind: 'ended' });
  }
  // Two people may exchange seats, or one person's games their times. Every one is lifted before the first is set down
  // again, or the constraints would see the half-way state.
  await tx.query(
    `update assignment set ended_at = $3, end_reason = 'replaced'
      where association_id = $1 and id = any ($2::uuid[]) and ended_at is null`,
    [associationId, preview.revised.map((seat) => seat.assignmentId), now],
  );
  for (const { assignmentId, seat, told, officialId, gameId } of preview.revised) {
    const sequence = await raiseSequence(tx, associationId, assignmentId, {
      sql: `ended_at = null, end_reason = null, revised_at = $3, reply = 'NEEDS-ACTION', replied_at = null,
            reply_reason = '', publication_id = $4, seat = $5, venue_id = $6, starts_at = $7, ends_at = $8,
            duty_starts_at = $9, duty_ends_at = $10`,
      values: [
        now,
        publicationId,
        seat,
        told.venueId,
        told.startsAt,
        told.endsAt,
        told.dutyStartsAt,
        told.dutyEndsAt,
      ],
    });
    applied.push({ assignmentId, sequence, officialId, gameId, kind: 'changed' });
  }
  const rows = preview.added.map((seat) => ({
    associationId,
    id: randomUUID(),
    uid: randomUUID(),
    sequence: 0,
    publicationId,
    gameId: seat.gameId,
    seat: seat.seat,
    officialId: seat.officialId,
    ...seat.told,
    reply: 'NEEDS-ACTION' as const,
    repliedAt: null,
    replyReason: '',
    endReason: null,
    endedAt: null,
    createdAt: now,
    revisedAt: now,
  }));
  if (rows.length > 0) await tx.insert(Assignment, rows);
  for (const { id: assignmentId, officialId, gameId } of rows) {
    applied.push({ assignmentId, sequence: 0, officialId, gameId, kind: 'assigned' });
  }
  return applied;
}

/** Changes one assignment and returns its new sequence number. */
async function raiseSequence(
  tx: EntityManager,
  associationId: string,
  assignmentId: string,
  change: { readonly sql: string; readonly values: readonly unknown[] },
): Promise<number> {
  const [rows] = await tx.query<[{ sequence: number }[], number]>(
    `update assignment set sequence = sequence + 1, ${change.sql}
      where association_id = $1 and id = $2 returning sequence`,
    [associationId, assignmentId, ...change.values],
  );
  const row = rows[0];
  if (row === undefined) throw new Error(`Assignment ${assignmentId} is gone while its slate is locked.`);
  return row.sequence;
}
