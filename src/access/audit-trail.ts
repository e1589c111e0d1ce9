import { Inject, Injectable } from '@nestjs/common';
import { randomUUID } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import { clockToken, type Clock } from '../platform/clock';
import { AuditEntry } from './audit-entry.entity';

/** What was done to what. `before` and `after` hold only the fields that changed, and no secret. */
export interface AuditNote {
  readonly associationId: string;
  /** `null`: the service itself, or a command on its terminal. */
  readonly accountId: string | null;
  /** Noun and verb, such as `slate.published`. */
  readonly action: string;
  readonly objectKind: string;
  readonly objectId: string;
  readonly before?: unknown;
  readonly after?: unknown;
}

/** Writes what was done, in the transaction that did it. */
@Injectable()
export class AuditTrail {
  constructor(@Inject(clockToken) private readonly clock: Clock) {}

  async write(tx: EntityManager, note: AuditNote): Promise<void> {
    const entry: AuditEntry = {
      associationId: note.associationId,
      id: randomUUID(),
      at: this.clock.now(),
      accountId: note.accountId,
      action: note.action,
      objectKind: note.objectKind,
      objectId: note.objectId,
      before: note.before ?? null,
      after: note.after ?? null,
    };
    // The two columns hold any JSON value, which the insert's own type cannot express.
    await tx.insert(AuditEntry, entry as object);
  }
}
