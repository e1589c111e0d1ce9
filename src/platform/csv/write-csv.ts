/**
 * Text of a CSV file: a header, commas, CRLF, quotes only where RFC 4180 asks for them, and where a cell has blanks at its
 * ends. Text is written as it is; begin it with an apostrophe elsewhere if a spreadsheet must not take it for a formula.
 */
export function writeCsv(names: readonly string[], rows: readonly (readonly string[])[]): string {
  return [names, ...rows].map((cells) => `${cells.map(quoted).join(',')}\r\n`).join('');
}

function quoted(cell: string): string {
  return /["\r\n,;\t]|^\s|\s$/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}
