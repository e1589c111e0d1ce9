/** A table as text, the first column to the left and figures to the right. */
export function table(header: readonly string[], rows: readonly (readonly string[])[]): string {
  const widths = header.map((title, i) => Math.max(title.length, ...rows.map((row) => row[i]!.length)));
  const line = (cells: readonly string[]) =>
    cells.map((cell, i) => (i === 0 ? cell.padEnd(widths[i]!) : cell.padStart(widths[i]!))).join('  ');
  return [line(header), widths.map((width) => '-'.repeat(width)).join('  '), ...rows.map(line)].join('\n');
}

export function percent(share: number | null): string {
  if (share === null || !Number.isFinite(share)) return '–';
  return share > 9.99 ? '> 999 %' : `${(100 * share).toFixed(2)} %`;
}

export function seconds(value: number | null): string {
  return value === null ? '–' : value.toFixed(1);
}
