import type { CsvRow } from '../../platform/csv/read-csv';
import type { FieldValue, ImportRecord } from './import-record';
import type { ImportState } from './import-state';

export type { FieldValue, ImportRecord };

/** What an association has decided that bears on reading its files. */
export interface ImportAssociation {
  readonly timeZone: string;
  /** The one form of dates besides ISO 8601, in Unicode field letters such as `dd.MM.yyyy`. */
  readonly dateFormat: string;
  /** ISO 4217 code in which fees are stated. */
  readonly currency: string;
  readonly adultAge: number;
  /** Minutes before tip-off, and after the end, that belong to a duty. */
  readonly arrivalLeadMinutes: number;
  readonly wrapUpMinutes: number;
}

/** What a cell may need to know to be read. */
export interface CellContext {
  readonly association: ImportAssociation;
  readonly state: ImportState;
  /** The character between columns; where it is no comma, a comma in a number can only be a decimal comma. */
  readonly separator: string;
}

export type CellResult<T> = { readonly value: T } | { readonly message: string; readonly remedy: string };

/** A way of reading a cell that is not empty. */
export interface Cell<T extends FieldValue> {
  /** For the reader of the documentation: what may stand there. */
  readonly form: string;
  read(text: string, context: CellContext): CellResult<T>;
}

/** A column of a file. */
export interface ImportColumn<T extends FieldValue> {
  readonly cell: Cell<T>;
  /** Whether the column must be there and every cell of it filled. */
  readonly required: boolean;
  /** Value of an empty cell, and of a new object where the column is missing. */
  readonly otherwise: T;
  /** What it means, for the documentation. */
  readonly says: string;
}

export type ImportColumns = Readonly<Record<string, ImportColumn<FieldValue>>>;

/** The record that a kind's columns make. */
export type RecordOf<C> = {
  readonly [K in keyof C]: C[K] extends ImportColumn<infer T> ? T : never;
};

/** A line of a file being turned into a record; the place where faults are noted. */
export interface RowContext extends CellContext {
  /** ISO 8601 date in the association's zone. */
  readonly today: string;
  /** A fault keeps everything from being stored. Column by field name. */
  readonly fault: (column: string | null, message: string, remedy: string) => void;
  /** A notice keeps nothing from being stored. */
  readonly notice: (column: string | null, message: string, remedy: string) => void;
}

/** A line that was read without a fault. */
export interface PlannedRow<R extends ImportRecord = ImportRecord> {
  readonly row: CsvRow;
  readonly key: string;
  readonly record: R;
}

/** What checks over all lines may use. */
export interface FileContext {
  readonly state: ImportState;
  readonly association: ImportAssociation;
  readonly today: string;
  readonly fault: (row: CsvRow, column: string | null, message: string, remedy: string) => void;
  readonly notice: (row: CsvRow, column: string | null, message: string, remedy: string) => void;
}

/** What a whole list says of an object that it does not name. */
export interface WholeList<R extends ImportRecord = ImportRecord> {
  readonly records: readonly R[];
  /** Local dates, both inclusive, that the list covers as far as it has dates; null takes those of its lines. */
  readonly range: DateRange | null;
}

export interface DateRange {
  readonly fromDate: string;
  readonly toDate: string;
}

/**
 * One kind of list: its columns, how a line becomes a record, and what is checked. Pure: it knows the state by codes and
 * numbers, and no database.
 */
export interface ImportKind<
  C extends ImportColumns = ImportColumns,
  R extends ImportRecord & RecordOf<C> = ImportRecord & RecordOf<C>,
> {
  /** As the command line and the documentation name it; plural. */
  readonly name: string;
  /** One object of it, for messages. */
  readonly noun: string;
  /** Kinds that its lines refer to; they are planned first. */
  readonly after: readonly string[];
  readonly columns: C;
  /** The natural key by which an object is recognised. */
  keyOf(filled: RecordOf<C>, context: CellContext): string;
  /** Checks a line as a whole and adds what follows from it; null when a fault was noted. */
  complete(merged: RecordOf<C>, context: RowContext, existing: R | undefined): R | null;
  /** Checks the lines against each other and against what is there. */
  checkAll?(rows: readonly PlannedRow<R>[], context: FileContext): void;
  /**
   * What becomes of an object that a whole list does not name: its record afterwards, null where it is deleted, undefined
   * where it stays.
   */
  withdraw?(record: R, list: WholeList<R>): R | null | undefined;
}

/** States a kind with its types checked, and gives it out in the form that the planner takes. */
export function defineImportKind<C extends ImportColumns, R extends ImportRecord & RecordOf<C>>(
  kind: ImportKind<C, R>,
): ImportKind {
  return kind;
}

/** A column that must be there and filled. */
export function required<T extends FieldValue>(cell: Cell<T>, says: string): ImportColumn<T> {
  return { cell, required: true, otherwise: '' as T, says };
}

/** A column that may be missing or empty. */
export function optional<T extends FieldValue>(cell: Cell<T>, otherwise: T, says: string): ImportColumn<T> {
  return { cell, required: false, otherwise, says };
}

/** `maxHomeMinutes` is headed `max_home_minutes`. */
export function headOf(field: string): string {
  return field.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
}
