import { randomUUID } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import type { AppliedChange } from './apply-publication';

/**
 * Writes what must be told into the outbox, in the transaction that made it true. An assignment, its sequence
 * number and the kind of message make a message unique, so that nothing can be queued twice.
 *
 * The rooms that send mail and serve feeds lie above this one; their tables are written here by name.
 */
export async function queueMessages(
  tx: EntityManager,
  associationId: string,
  changes: readonly AppliedChange[],
  now: Date,
): Promise<void> {
  for (const { assignmentId, sequence, officialId, gameId, kind } of changes) {
    await tx.query(
      `insert into outbox_message
         (association_id, id, dedupe_key, kind, official_id, assignment_id, sequence, payload, created_at, next_try_at)
       values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $9)
       on conflict (association_id, dedupe_key) do nothing`,
      [
        associationId,
        randomUUID(),
        `${assignmentId}:${sequence}:${kind}`,
        kind,
        officialId,
        assignmentId,
        sequence,
        JSON.stringify({ gameId }),
        now,
      ],
    );
  }
}

/** Counts a change of each official's feed, in order of id so that two transactions never wait for each other. */
export async function reviseFeeds(
  tx: EntityManager,
  associationId: string,
  officialIds: readonly string[],
  now: Date,
): Promise<void> {
  for (const officialId of [...new Set(officialIds)].sort()) {
    await tx.query(
      `insert into feed_revision (association_id, official_id, revision, changed_at) values ($1, $2, 1, $3)
       on conflict (association_id, official_id)
       do update set revision = feed_revision.revision + 1, changed_at = excluded.changed_at`,
      [associationId, officialId, now],
    );
  }
}
