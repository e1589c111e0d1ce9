/** Reading our own Markdown pages, so that tests can hold them against the code. */

/** The lines from a heading, which is given with its `#` marks, to the next one of the same or a higher rank. */
export function sectionOf(page: string, heading: string): string {
  const lines = page.split('\n');
  const start = lines.indexOf(heading);
  if (start < 0) throw new Error(`The page has no heading "${heading}".`);
  const rank = /^#+/.exec(heading)?.[0].length ?? 0;
  const length = lines.slice(start + 1).findIndex((line) => /^#+ /.test(line) && line.indexOf(' ') <= rank);
  return lines.slice(start + 1, length < 0 ? undefined : start + 1 + length).join('\n');
}

/** The cells of the first table under a heading, without its head; at least one row. */
export function tableUnder(page: string, heading: string): string[][] {
  const section = sectionOf(page, heading).split('\n');
  const head = section.findIndex((line) => line.startsWith('|'));
  const body = section.slice(head + 2);
  const end = body.findIndex((line) => !line.startsWith('|'));
  const rows = body.slice(0, end < 0 ? undefined : end).map(cellsOf);
  if (head < 0 || rows.length === 0) throw new Error(`No table stands under "${heading}".`);
  return rows;
}

function cellsOf(line: string): string[] {
  return line
    .replace(/^\||\|$/g, '')
    .split(/(?<!\\)\|/)
    .map((cell) => cell.trim());
}

/** What stands in backticks, in order; blocks of code are passed over. */
export function codeIn(text: string): string[] {
  return [...text.replace(/```[\s\S]*?```/g, '').matchAll(/`([^`]+)`/g)].map((match) => match[1] ?? '');
}
