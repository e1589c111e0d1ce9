import type { Tenancy } from '../platform/tenancy';
import { readOutboxState } from './outbox';

/** How mail fares over all associations; counts only, no names. */
export interface OutboxHealth {
  /** `not configured`: there is no mail server (SMTP_URL), and messages wait. */
  readonly status: 'ok' | 'not configured' | 'late' | 'dead letters';
  readonly waiting: number;
  readonly dead: number;
  /** Minutes since the oldest waiting message was written; 0 when none waits. */
  readonly oldestWaitingMinutes: number;
}

/** A message that has waited for longer says that no worker sends, or that the mail server refuses. */
const lateMinutes = 60;

export async function readOutboxHealth(
  tenancy: Tenancy,
  options: { readonly isConfigured: boolean; readonly now: Date },
): Promise<OutboxHealth> {
  const rows = await tenancy.readWith({}, (tx) =>
    tx.query<{ id: string }[]>('select association_ids() as id'),
  );
  let [waiting, dead, oldest] = [0, 0, options.now.getTime()];
  for (const { id } of rows) {
    const state = await tenancy.read(id, (tx) => readOutboxState(tx, id));
    waiting += state.waiting;
    dead += state.dead;
    oldest = Math.min(oldest, state.oldestWaitingSince?.getTime() ?? oldest);
  }
  const oldestWaitingMinutes = Math.floor((options.now.getTime() - oldest) / 60_000);
  return { status: statusOf(), waiting, dead, oldestWaitingMinutes };

  function statusOf(): OutboxHealth['status'] {
    if (!options.isConfigured) return 'not configured';
    if (dead > 0) return 'dead letters';
    return oldestWaitingMinutes > lateMinutes ? 'late' : 'ok';
  }
}
