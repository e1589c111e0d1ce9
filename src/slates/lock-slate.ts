import type { EntityManager } from 'typeorm';
import { Slate } from './slate.entity';

/**
 * Holds a slate until the transaction ends: whatever changes the working copy or publishes it waits here, so
 * that two at once become one after the other. Null where the association has no such slate.
 */
export function lockSlate(tx: EntityManager, associationId: string, slateId: string): Promise<Slate | null> {
  return tx.findOne(Slate, {
    where: { associationId, id: slateId },
    lock: { mode: 'pessimistic_write' },
  });
}
