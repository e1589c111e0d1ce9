/** Rows of text in columns that are as wide as their widest cell; the last column is not padded. */
export function textTable(header: readonly string[], rows: readonly (readonly string[])[]): string {
  const lines = [header, ...rows];
  const widths = header.map((_, column) => Math.max(...lines.map((line) => width(line[column] ?? ''))));
  const rule = widths.map((columns) => '-'.repeat(columns));
  return [header, rule, ...rows]
    .map((line) =>
      line
        .map((cell, column) =>
          column === line.length - 1 ? cell : cell + ' '.repeat((widths[column] ?? 0) - width(cell)),
        )
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}

/** Characters as people count them. */
function width(text: string): number {
  return [...new Intl.Segmenter(undefined, { granularity: 'grapheme' }).segment(text)].length;
}
