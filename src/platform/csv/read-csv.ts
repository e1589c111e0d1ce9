import { CsvError, parse, type Info } from 'csv-parse/sync';
import { csvFault, type CsvFault } from './csv-fault';
import { decodeText } from './decode-text';

/** A column that a file may have. */
export interface CsvColumn {
  /** As it is documented: lower-case words joined by underscores. */
  readonly name: string;
  /** Whether a file without it is refused. */
  readonly required: boolean;
}

/** One line of a file under its header. */
export interface CsvRow {
  readonly file: string;
  /** Where the line begins, counted from 1. */
  readonly line: number;
  /** Trimmed text by column name; only columns that the file has. */
  readonly cells: ReadonlyMap<string, string>;
}

export interface CsvContent {
  readonly rows: readonly CsvRow[];
  readonly faults: readonly CsvFault[];
  /** Comma, semicolon or tab. A comma inside a number can only be a decimal comma where it separates no columns. */
  readonly separator: string;
  /** False where the file or its header could not be understood, so that nothing is known of its rows. */
  readonly readable: boolean;
}

/** Most lines that a file may have. */
export const fileLinesMax = 100_000;

/** Cells of a row longer than this in all are refused, which catches a quote that is never closed. */
const recordCharactersMax = 100_000;

const separators = [',', ';', '\t'] as const;

/** Two heads mean the same column when they differ in case, spaces, underscores and hyphens only. */
export function columnKey(name: string): string {
  return name.toLowerCase().replace(/[\s_-]+/g, '');
}

/**
 * Reads a CSV file as spreadsheets write it: UTF-8 with or without byte order mark; comma, semicolon or tab, told by the
 * header; RFC 4180 quotes; any line ends; blank lines; a header in any order and case. A cell is text, whatever it looks like.
 * Reports every fault.
 */
export function readCsv(file: string, bytes: Uint8Array, columns: readonly CsvColumn[]): CsvContent {
  const decoded = decodeText(file, bytes);
  if ('fault' in decoded) return unreadable([decoded.fault]);
  const text = decoded.text.replace(/\r\n?/g, '\n');
  const lines = countLines(text);
  if (lines > fileLinesMax) {
    const message = `The file has ${lines} lines, more than ${fileLinesMax}.`;
    return unreadable([csvFault({ file, line: 1, message, remedy: 'split it into several files' })]);
  }
  const separator = separatorOf(text);
  const { records, faults } = readRecords(file, text, separator);
  const [header, ...body] = records;
  if (header === undefined) {
    const missing = { file, line: 1, message: 'The file is empty.', remedy: `begin with ${heads(columns)}` };
    return unreadable(faults.length > 0 ? faults : [csvFault(missing)]);
  }
  const head = readHeader(file, header, columns);
  faults.push(...head.faults);
  if (head.faults.length > 0) return { rows: [], faults: inOrder(faults), separator, readable: false };

  const rows: CsvRow[] = [];
  for (const record of body) {
    const surplus = record.cells.slice(head.names.length).find((cell) => cell !== '');
    if (surplus !== undefined) {
      const message = `The line has more cells than the header's ${head.names.length}.`;
      const remedy = `put quotes around text that contains "${separator}"`;
      faults.push(csvFault({ file, line: record.line, value: surplus, message, remedy }));
      continue;
    }
    rows.push({
      file,
      line: record.line,
      cells: new Map(head.names.map((name, index) => [name, record.cells[index] ?? ''])),
    });
  }
  return { rows, faults: inOrder(faults), separator, readable: true };
}

interface CsvRecord {
  readonly line: number;
  readonly cells: readonly string[];
}

function readRecords(
  file: string,
  text: string,
  separator: string,
): { records: CsvRecord[]; faults: CsvFault[] } {
  const faults: CsvFault[] = [];
  const records: CsvRecord[] = [];
  const note = (error: CsvError) => {
    const line = typeof error['lines'] === 'number' ? error['lines'] : 1;
    // After a wrong closing quote the parser looks for the end in vain; one fault says it all.
    if (error.code === 'CSV_QUOTE_NOT_CLOSED' && faults.length > 0) return;
    faults.push(csvFault({ file, line, ...quoteFault(error.code) }));
  };
  try {
    const read = parse(text, {
      delimiter: separator,
      record_delimiter: '\n',
      info: true,
      relax_column_count: true,
      skip_empty_lines: true,
      skip_records_with_error: true,
      max_record_size: recordCharactersMax,
      on_skip: (error) => {
        if (error !== undefined) note(error);
        return undefined;
      },
    }) as unknown as { record: string[]; info: Info }[];
    for (const { record, info } of read) {
      const cells = record.map((cell) => cell.trim());
      if (cells.every((cell) => cell === '')) continue;
      const inner = record.reduce((sum, cell) => sum + (cell.match(/\n/g)?.length ?? 0), 0);
      records.push({ line: info.lines - inner, cells });
    }
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    note(error);
  }
  return { records, faults };
}

function quoteFault(code: string): Pick<CsvFault, 'message' | 'remedy'> {
  const remedy = 'put quotes around the whole cell and double each quote inside it';
  if (code === 'CSV_QUOTE_NOT_CLOSED') return { message: 'A quote is opened and never closed.', remedy };
  if (code === 'CSV_MAX_RECORD_SIZE')
    return { message: `The line has more than ${recordCharactersMax} characters.`, remedy };
  return { message: 'A quote stands inside a cell.', remedy };
}

function readHeader(
  file: string,
  header: CsvRecord,
  columns: readonly CsvColumn[],
): { names: string[]; faults: CsvFault[] } {
  const faults: CsvFault[] = [];
  const { line } = header;
  const known = new Map(columns.map((column) => [columnKey(column.name), column.name]));
  const seen = new Set<string>();
  const heading = [...header.cells];
  while (heading.at(-1) === '') heading.pop();
  const names = heading.map((value) => {
    const name = known.get(columnKey(value));
    if (name === undefined) {
      const message = value === '' ? 'A column has no name.' : 'Nobody knows this column.';
      const remedy = `remove or rename it; known are ${heads(columns)}`;
      faults.push(csvFault({ file, line, column: value || null, value, message, remedy }));
      return value;
    }
    if (seen.has(name)) {
      const message = 'The column is there twice.';
      faults.push(csvFault({ file, line, column: value, value, message, remedy: 'keep one of them' }));
    }
    seen.add(name);
    return name;
  });
  for (const { name, required } of columns) {
    if (!required || seen.has(name)) continue;
    const message = `The column ${name} is missing.`;
    const remedy = `add it; the header here is ${heading.join(', ')}`;
    faults.push(csvFault({ file, line, column: name, message, remedy }));
  }
  return { names, faults };
}

/** The separator that the header uses most outside quotes; a comma where there is one column only. */
function separatorOf(text: string): string {
  const header = (/[^\s][^\n]*/.exec(text)?.[0] ?? '').replace(/"[^"]*"/g, '');
  const countOf = (separator: string) => header.split(separator).length;
  return separators.reduce((best, separator) => (countOf(separator) > countOf(best) ? separator : best), ',');
}

function countLines(text: string): number {
  let count = text === '' || text.endsWith('\n') ? 0 : 1;
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) count += 1;
  return count;
}

function heads(columns: readonly CsvColumn[]): string {
  return columns.map((column) => column.name).join(', ');
}

function inOrder(faults: readonly CsvFault[]): CsvFault[] {
  return [...faults].sort((left, right) => left.line - right.line);
}

function unreadable(faults: readonly CsvFault[]): CsvContent {
  return { rows: [], faults, separator: ',', readable: false };
}
