import type { ImportRecord } from './import-record';
import { nearestName } from './nearest-name';

export type StateEntries = ReadonlyMap<string, ReadonlyMap<string, ImportRecord>>;

/**
 * Everything an association has, by kind and natural key, while a plan is made: what was read from the database and, as the
 * plan goes on, what earlier files add and change.
 */
export class ImportState {
  private readonly kinds = new Map<string, Map<string, ImportRecord>>();
  private readonly inFault = new Set<string>();
  private readonly unreadable = new Set<string>();
  private readonly suggestions = new Map<string, string | null>();

  constructor(entries: StateEntries) {
    for (const [kind, records] of entries) this.kinds.set(kind, new Map(records));
  }

  get(kind: string, key: string): ImportRecord | undefined {
    return this.kinds.get(kind)?.get(key);
  }

  all(kind: string): ReadonlyMap<string, ImportRecord> {
    return this.kinds.get(kind) ?? new Map<string, ImportRecord>();
  }

  put(kind: string, key: string, record: ImportRecord): void {
    const records = this.kinds.get(kind) ?? new Map<string, ImportRecord>();
    records.set(key, record);
    this.kinds.set(kind, records);
  }

  remove(kind: string, key: string): void {
    this.kinds.get(kind)?.delete(key);
  }

  /** A line with this key has a fault of its own: who refers to it is not blamed as well. */
  noteInFault(kind: string, key: string): void {
    this.inFault.add(`${kind}\n${key}`);
  }

  /** A file of this kind cannot be read, so nobody knows what it would have brought. */
  noteUnreadable(kind: string): void {
    this.unreadable.add(kind);
  }

  /** Whether something exists; also true where a fault already reported keeps us from telling. */
  mayHave(kind: string, key: string): boolean {
    return (
      this.kinds.get(kind)?.has(key) === true ||
      this.unreadable.has(kind) ||
      this.inFault.has(`${kind}\n${key}`)
    );
  }

  /** The name of that kind most like a mistyped one; null when none is near. */
  suggestion(kind: string, mistyped: string): string | null {
    const asked = `${kind}\n${mistyped}`;
    const known = this.suggestions.get(asked);
    if (known !== undefined) return known;
    const found = nearestName(mistyped, this.all(kind).keys());
    this.suggestions.set(asked, found);
    return found;
  }
}
