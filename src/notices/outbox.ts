import type { EntityManager } from 'typeorm';
import type { OutboxMessage } from './outbox-message.entity';

/** A message that this worker alone may send until `leasedUntil`. */
export interface ClaimedMessage extends Pick<
  OutboxMessage,
  'id' | 'kind' | 'officialId' | 'assignmentId' | 'sequence'
> {
  readonly associationId: string;
  /** This try included. */
  readonly attempts: number;
  readonly leasedUntil: Date;
}

export type SendOutcome =
  | { readonly kind: 'sent' }
  /** Nobody needs it any more. */
  | { readonly kind: 'superseded' }
  | { readonly kind: 'retry'; readonly at: Date; readonly fault: string }
  | { readonly kind: 'dead'; readonly fault: string };

const waiting = 'sent_at is null and superseded_at is null and dead_at is null';

/**
 * Takes the oldest due messages for this worker. Rows that another worker holds are passed over, not waited for;
 * a worker that dies gives its rows back when the lease ends.
 */
export async function claimDueMessages(
  tx: EntityManager,
  options: {
    readonly associationId: string;
    readonly now: Date;
    readonly leasedUntil: Date;
    readonly limit: number;
  },
): Promise<ClaimedMessage[]> {
  const { associationId, now, leasedUntil, limit } = options;
  const [rows] = await tx.query<[Record<string, unknown>[], number]>(
    // Materialised, or the planner may run the inner query once a row and take more than the limit.
    `with picked as materialized (
        select id from outbox_message
         where association_id = $1 and ${waiting} and next_try_at <= $2
           and (leased_until is null or leased_until <= $2)
         order by next_try_at, created_at, id
         limit $4
         for update skip locked)
      update outbox_message set leased_until = $3, attempts = attempts + 1
        from picked where association_id = $1 and outbox_message.id = picked.id
      returning outbox_message.id, kind, official_id, assignment_id, sequence, attempts`,
    [associationId, now, leasedUntil, limit],
  );
  return rows.map((row) => ({
    associationId,
    id: row['id'] as string,
    kind: row['kind'] as ClaimedMessage['kind'],
    officialId: row['official_id'] as string | null,
    assignmentId: row['assignment_id'] as string | null,
    sequence: row['sequence'] as number | null,
    attempts: row['attempts'] as number,
    leasedUntil,
  }));
}

/**
 * Writes down what became of a claimed message.
 *
 * @returns false when the lease had ended and another worker has taken the message since; nothing is written then
 */
export async function settleMessage(
  tx: EntityManager,
  message: ClaimedMessage,
  outcome: SendOutcome,
  now: Date,
): Promise<boolean> {
  const [, changed] = await tx.query<[unknown[], number]>(
    `update outbox_message set
        leased_until = null,
        sent_at = case when $5 = 'sent' then $6::timestamptz end,
        superseded_at = case when $5 = 'superseded' then $6::timestamptz end,
        dead_at = case when $5 = 'dead' then $6::timestamptz end,
        next_try_at = coalesce($7::timestamptz, next_try_at),
        last_fault = $8
      where association_id = $1 and id = $2 and leased_until = $3 and attempts = $4 and ${waiting}`,
    [
      message.associationId,
      message.id,
      message.leasedUntil,
      message.attempts,
      outcome.kind,
      now,
      outcome.kind === 'retry' ? outcome.at : null,
      outcome.kind === 'retry' || outcome.kind === 'dead' ? outcome.fault.slice(0, 500) : null,
    ],
  );
  return changed === 1;
}

/** Whether a newer message about the same assignment stands in the outbox, so that this one tells old news. */
export async function isOvertaken(tx: EntityManager, message: ClaimedMessage): Promise<boolean> {
  if (message.assignmentId === null || message.sequence === null) return false;
  const rows = await tx.query<unknown[]>(
    `select 1 from outbox_message
      where association_id = $1 and assignment_id = $2 and sequence > $3 and dead_at is null limit 1`,
    [message.associationId, message.assignmentId, message.sequence],
  );
  return rows.length > 0;
}

/** How an association's outbox stands. */
export interface OutboxState {
  readonly waiting: number;
  readonly dead: number;
  /** When the oldest message that still waits was written; null when none does. */
  readonly oldestWaitingSince: Date | null;
}

export async function readOutboxState(tx: EntityManager, associationId: string): Promise<OutboxState> {
  const [row] = await tx.query<{ waiting: number; dead: number; oldest: Date | null }[]>(
    `select count(*) filter (where ${waiting})::int as waiting,
            count(*) filter (where dead_at is not null)::int as dead,
            min(created_at) filter (where ${waiting}) as oldest
       from outbox_message where association_id = $1`,
    [associationId],
  );
  return {
    waiting: row?.waiting ?? 0,
    dead: row?.dead ?? 0,
    oldestWaitingSince: row?.oldest ?? null,
  };
}
