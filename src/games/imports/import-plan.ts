import type { CsvFault } from '../../platform/csv/csv-fault';
import type { FieldValue, ImportRecord } from './import-record';

/** A file as it was handed in. */
export interface ImportFile {
  /** Which kind of list it is. */
  readonly kind: string;
  /** As the person knows it. */
  readonly name: string;
  readonly bytes: Uint8Array;
}

export interface AddedObject {
  readonly key: string;
  readonly record: ImportRecord;
}

export interface ChangedObject {
  readonly key: string;
  readonly before: ImportRecord;
  readonly after: ImportRecord;
  /** Only what differs. */
  readonly fields: readonly ChangedField[];
}

export interface ChangedField {
  readonly field: string;
  readonly before: FieldValue;
  readonly after: FieldValue;
}

/** An object that a whole list does not name. */
export interface RemovedObject {
  readonly key: string;
  readonly before: ImportRecord;
  /** What stays of it: a cancelled game, an official no longer active. Null where it is deleted. */
  readonly after: ImportRecord | null;
}

/** What one kind's files would do. */
export interface KindPlan {
  readonly kind: string;
  readonly noun: string;
  readonly added: readonly AddedObject[];
  readonly changed: readonly ChangedObject[];
  readonly removed: readonly RemovedObject[];
  /** Lines that say what is so already. */
  readonly left: number;
}

/** What files would do; nothing may be stored while there is a fault. */
export interface ImportPlan {
  /** In the order in which they must be stored. */
  readonly kinds: readonly KindPlan[];
  readonly faults: readonly CsvFault[];
  /** What somebody should look at, though it can be stored. */
  readonly notices: readonly CsvFault[];
}

/** Whether storing a plan would change anything. */
export function isEmptyPlan(plan: ImportPlan): boolean {
  return plan.kinds.every(
    ({ added, changed, removed }) => added.length + changed.length + removed.length === 0,
  );
}

/** The fields in which two records of the same kind differ. */
export function changedFields(before: ImportRecord, after: ImportRecord): ChangedField[] {
  const fields = new Set([...Object.keys(before), ...Object.keys(after)]);
  return [...fields].flatMap((field) => {
    const [old, now] = [before[field] ?? null, after[field] ?? null];
    return JSON.stringify(old) === JSON.stringify(now) ? [] : [{ field, before: old, after: now }];
  });
}
