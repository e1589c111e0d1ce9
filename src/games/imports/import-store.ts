import type { EntityManager, EntityTarget, ObjectLiteral, QueryDeepPartialEntity } from 'typeorm';

import type { ImportAssociation } from './import-kind';
import type { ImportRecord } from './import-record';
import type { KindPlan } from './import-plan';

/** The database's ids by what files call things. */
export class ObjectIds {
  private readonly ids = new Map<string, string>();

  put(kind: string, key: string, id: string): void {
    this.ids.set(`${kind}\n${key}`, id);
  }

  find(kind: string, key: string): string | null {
    return this.ids.get(`${kind}\n${key}`) ?? null;
  }

  /** @throws when there is none; the plan has seen to it that there is */
  get(kind: string, key: string): string {
    const id = this.find(kind, key);
    if (id === null) throw new Error(`No id of ${kind} "${key}".`);
    return id;
  }
}

export interface StoreContext {
  readonly associationId: string;
  readonly association: ImportAssociation;
  readonly now: Date;
  readonly ids: ObjectIds;
}

/** The database's side of a kind of list. */
export interface ImportStore {
  readonly kind: string;
  /** Everything of that kind as files would state it, by natural key; notes the ids. */
  load(tx: EntityManager, context: Omit<StoreContext, 'now'>): Promise<Map<string, ImportRecord>>;
  /** Stores a plan without faults and notes the ids of what it adds. */
  store(tx: EntityManager, plan: KindPlan, context: StoreContext): Promise<void>;
}

const rowsPerStatement = 500;

/** Inserts any number of rows, some hundreds in a statement. */
export async function insertAll<E extends ObjectLiteral>(
  tx: EntityManager,
  entity: EntityTarget<E>,
  rows: readonly QueryDeepPartialEntity<E>[],
): Promise<void> {
  for (let at = 0; at < rows.length; at += rowsPerStatement)
    await tx.insert(entity, rows.slice(at, at + rowsPerStatement));
}

/** Objects that stay, with what they become: changed ones, and removed ones that are not deleted. */
export function updatesOf(plan: KindPlan): { key: string; before: ImportRecord; record: ImportRecord }[] {
  return [
    ...plan.changed.map(({ key, before, after }) => ({ key, before, record: after })),
    ...plan.removed.flatMap(({ key, before, after }) =>
      after === null ? [] : [{ key, before, record: after }],
    ),
  ];
}

/** Keys of the objects that are deleted. */
export function deletionsOf(plan: KindPlan): string[] {
  return plan.removed.filter(({ after }) => after === null).map(({ key }) => key);
}
