import { Inject, Injectable } from '@nestjs/common';
import { randomUUID } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import { Association } from '../../access/association.entity';
import type { AuditEntry } from '../../access/audit-entry.entity';
import { clockToken, type Clock } from '../../platform/clock';
import { localParts } from '../../platform/local-time';
import { Tenancy } from '../../platform/tenancy';
import type { DateRange, ImportAssociation } from './import-kind';
import type { ImportRecord } from './import-record';
import { ownKinds, type StoredKind } from './import-kinds';
import { isEmptyPlan, type ImportFile, type ImportPlan, type KindPlan } from './import-plan';
import { ObjectIds, type StoreContext } from './import-store';
import { planImport, type PlanOptions } from './plan-import';

export interface ImportOptions {
  /** Each file is the whole list: what it does not name is withdrawn. False unless stated. */
  readonly whole?: boolean;
  /** The local dates that whole lists of dated things cover; those of their lines unless stated. */
  readonly range?: DateRange;
  /** Who does it, for the audit trail; null is a command on the terminal. */
  readonly accountId?: string | null;
}

/** What became of files: stored with all they say, or refused with every fault and nothing stored. */
export type ImportOutcome = {
  readonly outcome: 'stored' | 'refused';
  readonly plan: ImportPlan;
};

interface Prepared {
  readonly plan: ImportPlan;
  readonly context: StoreContext;
}

/** Takes lists in: first a plan, then the same plan again and stored, in one transaction. */
@Injectable()
export class ImportsService {
  private readonly kinds = new Map(ownKinds.map((stored) => [stored.kind.name, stored]));

  constructor(
    private readonly tenancy: Tenancy,
    @Inject(clockToken) private readonly clock: Clock,
  ) {}

  /** Adds a kind of list that belongs to a floor above. */
  register(stored: StoredKind): void {
    this.kinds.set(stored.kind.name, stored);
  }

  /** Every kind of list, with its columns. */
  knownKinds(): readonly StoredKind[] {
    return [...this.kinds.values()];
  }

  /** What the files would do; nothing is stored. */
  async plan(
    associationId: string,
    files: readonly ImportFile[],
    options: ImportOptions = {},
  ): Promise<ImportPlan> {
    const { plan } = await this.tenancy.read(associationId, (tx) =>
      this.prepare(tx, { associationId, files, options }),
    );
    return plan;
  }

  /** Plans and stores, all or nothing; does nothing while any fault stands. */
  async apply(
    associationId: string,
    files: readonly ImportFile[],
    options: ImportOptions = {},
  ): Promise<ImportOutcome> {
    return this.tenancy.run(associationId, (tx) => this.applyIn(tx, associationId, files, options));
  }

  /** The same inside the caller's transaction, which is bound to the association. */
  async applyIn(
    tx: EntityManager,
    associationId: string,
    files: readonly ImportFile[],
    options: ImportOptions = {},
  ): Promise<ImportOutcome> {
    // Two imports at once would each plan on what the other is about to change.
    await tx.query('select pg_advisory_xact_lock(hashtextextended($1, 0))', [`import ${associationId}`]);
    const { plan, context } = await this.prepare(tx, { associationId, files, options });
    if (plan.faults.length > 0) return { outcome: 'refused', plan };
    if (!isEmptyPlan(plan)) {
      for (const part of plan.kinds) await this.kinds.get(part.kind)?.store.store(tx, part, context);
      await writeAudit(
        tx,
        plan.kinds.flatMap((part) => auditOf(part, context, options)),
      );
    }
    return { outcome: 'stored', plan };
  }

  private async prepare(
    tx: EntityManager,
    asked: { associationId: string; files: readonly ImportFile[]; options: ImportOptions },
  ): Promise<Prepared> {
    const { associationId, files, options } = asked;
    const association = await importAssociation(tx, associationId);
    const ids = new ObjectIds();
    const now = this.clock.now();
    const entries = new Map<string, Map<string, ImportRecord>>();
    for (const { kind, store } of this.kinds.values())
      entries.set(kind.name, await store.load(tx, { associationId, association, ids }));
    const planOptions: PlanOptions = {
      association,
      today: localParts(now, association.timeZone).date,
      whole: options.whole ?? false,
      range: options.range ?? null,
    };
    const kinds = this.knownKinds().map(({ kind }) => kind);
    const plan = planImport(files, entries, kinds, planOptions);
    return { plan, context: { associationId, association, ids, now } };
  }
}

async function importAssociation(tx: EntityManager, associationId: string): Promise<ImportAssociation> {
  const association = await tx.findOneByOrFail(Association, { id: associationId });
  const { timeZone, dateFormat, currency, policy } = association;
  const { adultAge, arrivalLeadMinutes, wrapUpMinutes } = policy;
  return { timeZone, dateFormat, currency, adultAge, arrivalLeadMinutes, wrapUpMinutes };
}

/** One entry for each object, with only the fields that changed. */
function auditOf(
  part: KindPlan,
  { associationId, now }: StoreContext,
  { accountId = null }: ImportOptions,
): AuditEntry[] {
  const entry = (objectId: string, before: ImportRecord | null, after: ImportRecord | null) => ({
    associationId,
    id: randomUUID(),
    at: now,
    accountId,
    action: `import.${part.kind}`,
    objectKind: part.noun,
    objectId,
    before,
    after,
  });
  return [
    ...part.added.map(({ key, record }) => entry(key, null, record)),
    ...part.changed.map(({ key, fields }) =>
      entry(
        key,
        Object.fromEntries(fields.map(({ field, before }) => [field, before])),
        Object.fromEntries(fields.map(({ field, after }) => [field, after])),
      ),
    ),
    ...part.removed.map(({ key, before, after }) => entry(key, before, after)),
  ];
}

async function writeAudit(tx: EntityManager, entries: readonly AuditEntry[]): Promise<void> {
  await tx.query(
    `insert into audit_entry (association_id, id, at, account_id, action, object_kind, object_id, before, after)
     select "associationId", id, at, "accountId", action, "objectKind", "objectId", before, after
       from jsonb_to_recordset($1::jsonb) as entry ("associationId" uuid, id uuid, at timestamptz, "accountId" uuid,
         action text, "objectKind" text, "objectId" text, before jsonb, after jsonb)`,
    [JSON.stringify(entries)],
  );
}
