import { csvFault, type CsvFault } from '../../platform/csv/csv-fault';
import { readCsv, type CsvRow } from '../../platform/csv/read-csv';
import {
  headOf,
  type DateRange,
  type ImportAssociation,
  type ImportColumns,
  type ImportKind,
  type PlannedRow,
  type RowContext,
} from './import-kind';
import type { FieldValue, ImportRecord } from './import-record';
import {
  changedFields,
  type AddedObject,
  type ChangedObject,
  type ImportFile,
  type ImportPlan,
  type KindPlan,
  type RemovedObject,
} from './import-plan';
import { ImportState, type StateEntries } from './import-state';

export interface PlanOptions {
  readonly association: ImportAssociation;
  /** ISO 8601 date in the association's zone. */
  readonly today: string;
  /** Whether each file is the whole list, so that what it does not name is withdrawn. */
  readonly whole: boolean;
  /** For whole lists of dated things: which days they cover; null takes the first to the last day they name. */
  readonly range: DateRange | null;
}

/**
 * What files would do to an association: pure, and the same whatever order the files come in, because kinds are planned in
 * the order in which they refer to each other and later kinds see what earlier ones bring. Reports every fault.
 */
export function planImport(
  files: readonly ImportFile[],
  entries: StateEntries,
  kinds: readonly ImportKind[],
  options: PlanOptions,
): ImportPlan {
  const state = new ImportState(entries);
  const faults: CsvFault[] = [];
  const notices: CsvFault[] = [];
  const names = kinds.map(({ name }) => name);
  for (const { kind, name } of files.filter((file) => !names.includes(file.kind))) {
    const message = `"${kind}" is no kind of list.`;
    faults.push(
      csvFault({ file: name, line: 1, value: kind, message, remedy: `use one of ${names.join(', ')}` }),
    );
  }
  const plans = inOrder(kinds).flatMap((kind) => {
    const own = files.filter((file) => file.kind === kind.name);
    return own.length === 0 ? [] : [planKind(kind, own, { ...options, state, faults, notices })];
  });
  return { kinds: plans, faults, notices };
}

interface Surroundings extends PlanOptions {
  readonly state: ImportState;
  readonly faults: CsvFault[];
  readonly notices: CsvFault[];
}

function planKind(kind: ImportKind, files: readonly ImportFile[], around: Surroundings): KindPlan {
  const { state, faults, notices } = around;
  const columns = Object.entries(kind.columns).map(([field, { required }]) => ({
    name: headOf(field),
    required,
  }));
  const firstByKey = new Map<string, CsvRow>();
  const rows: PlannedRow[] = [];
  const faultsBefore = faults.length;
  for (const file of files) {
    const content = readCsv(file.name, file.bytes, columns);
    faults.push(...content.faults);
    if (!content.readable) state.noteUnreadable(kind.name);
    for (const row of content.rows) {
      const planned = planRow(kind, row, { ...around, separator: content.separator }, firstByKey);
      if (planned !== null) rows.push(planned);
    }
  }
  kind.checkAll?.(rows, {
    ...around,
    fault: (row, column, message, remedy) => faults.push(noteAt(row, column, message, remedy)),
    notice: (row, column, message, remedy) => notices.push(noteAt(row, column, message, remedy)),
  });
  const removed =
    around.whole && faults.length === faultsBefore
      ? removals(kind, rows, new Set(firstByKey.keys()), around)
      : [];
  return { kind: kind.name, noun: kind.noun, ...compared(kind, rows, state), removed };
}

/** Reads one line; null when it has a fault. */
function planRow(
  kind: ImportKind,
  row: CsvRow,
  around: Surroundings & { readonly separator: string },
  firstByKey: Map<string, CsvRow>,
): PlannedRow | null {
  const { state, faults, notices } = around;
  const faultsBefore = faults.length;
  const context: RowContext = {
    ...around,
    fault: (column, message, remedy) => faults.push(noteAt(row, column, message, remedy)),
    notice: (column, message, remedy) => notices.push(noteAt(row, column, message, remedy)),
  };
  const stated = readCells(kind.columns, row, context);
  const defaults = Object.fromEntries(
    Object.entries(kind.columns).map(([field, column]) => [field, column.otherwise]),
  );
  const key = kind.keyOf({ ...defaults, ...stated }, context);
  const first = firstByKey.get(key);
  if (faults.length > faultsBefore) {
    state.noteInFault(kind.name, key);
    return null;
  }
  if (first !== undefined) {
    const where = first.file === row.file ? `line ${first.line}` : `line ${first.line} of ${first.file}`;
    context.fault(null, `This ${kind.noun} stands in ${where} already.`, 'keep one of the two lines');
    return null;
  }
  firstByKey.set(key, row);
  const existing = state.get(kind.name, key);
  const known = Object.fromEntries(
    Object.keys(kind.columns).flatMap((field) => {
      const value = existing?.[field];
      return value === undefined ? [] : [[field, value]];
    }),
  );
  const record = kind.complete({ ...defaults, ...known, ...stated }, context, existing);
  if (record === null || faults.length > faultsBefore) {
    state.noteInFault(kind.name, key);
    return null;
  }
  return { row, key, record };
}

/** The fields that the line states: of columns that the file has, an empty cell being the column's default. */
function readCells(columns: ImportColumns, row: CsvRow, context: RowContext): Record<string, FieldValue> {
  const stated: Record<string, FieldValue> = {};
  for (const [field, column] of Object.entries(columns)) {
    const text = row.cells.get(headOf(field));
    if (text === undefined) continue;
    if (text === '') {
      stated[field] = column.otherwise;
      if (column.required) context.fault(field, 'It is empty.', `write ${column.cell.form}`);
      continue;
    }
    const read = column.cell.read(text, context);
    if ('value' in read) stated[field] = read.value;
    else context.fault(field, read.message, read.remedy);
  }
  return stated;
}

function compared(
  kind: ImportKind,
  rows: readonly PlannedRow[],
  state: ImportState,
): { added: AddedObject[]; changed: ChangedObject[]; left: number } {
  const added: AddedObject[] = [];
  const changed: ChangedObject[] = [];
  let left = 0;
  for (const { key, record } of rows) {
    const before = state.get(kind.name, key);
    const fields = before === undefined ? [] : changedFields(before, record);
    if (before === undefined) added.push({ key, record });
    else if (fields.length === 0) left += 1;
    else changed.push({ key, before, after: record, fields });
    state.put(kind.name, key, record);
  }
  return { added, changed, left };
}

function removals(
  kind: ImportKind,
  rows: readonly PlannedRow[],
  named: ReadonlySet<string>,
  around: Surroundings,
): RemovedObject[] {
  const list = { records: rows.map(({ record }) => record), range: around.range };
  const removed: RemovedObject[] = [];
  for (const [key, before] of [...around.state.all(kind.name)]) {
    if (named.has(key)) continue;
    const after: ImportRecord | null | undefined = kind.withdraw?.(before, list);
    if (after === undefined) continue;
    removed.push({ key, before, after });
    if (after === null) around.state.remove(kind.name, key);
    else around.state.put(kind.name, key, after);
  }
  return removed;
}

function noteAt(row: CsvRow, field: string | null, message: string, remedy: string): CsvFault {
  const column = field === null ? null : headOf(field);
  const value = column === null ? '' : (row.cells.get(column) ?? '');
  return csvFault({ file: row.file, line: row.line, column, value, message, remedy });
}

/** Every kind after those that it refers to. */
function inOrder(kinds: readonly ImportKind[]): ImportKind[] {
  const ordered: ImportKind[] = [];
  const visit = (kind: ImportKind) => {
    if (ordered.includes(kind)) return;
    for (const name of kind.after) {
      const earlier = kinds.find((other) => other.name === name);
      if (earlier !== undefined) visit(earlier);
    }
    ordered.push(kind);
  };
  kinds.forEach(visit);
  return ordered;
}
