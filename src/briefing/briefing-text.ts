import type { Briefing } from './briefing-document';
import type { ChecklistRole } from './content/checklist-item';

const roleWords: Record<ChecklistRole, string> = { chief: 'chief ', umpire: 'umpire', both: 'both  ' };

/**
 * The briefing as text for a terminal or a plain message.
 *
 * @param columns longest line; words that are longer stay whole
 */
export function briefingText(briefing: Briefing, columns = 88): string {
  const lines: string[] = [];
  const put = (text: string, indent = '', hanging = indent) =>
    lines.push(...wrapped(text, { columns, indent, hanging }));
  const section = (title: string) => lines.push('', title.toUpperCase(), '');

  lines.push(briefing.title, '='.repeat(Math.min(columns, [...briefing.title].length)));
  for (const { label, text } of briefing.head) put(text, label.padEnd(10), ' '.repeat(10));
  for (const { side, name, colour } of briefing.teams)
    put(`${name}: ${colour}`, side.padEnd(10), ' '.repeat(10));
  section('Crew');
  for (const { role, name, contact } of briefing.crew) {
    put([name, contact].filter((part) => part !== '').join(', '), role.padEnd(12), ' '.repeat(12));
  }
  if (briefing.warnings.length > 0) {
    section('Mind');
    for (const { text, source } of briefing.warnings) put(`${text} [${source}]`, '! ', '  ');
  }
  section('The clock of the day');
  for (const { time, text, isAbout, source } of briefing.clock) {
    put(`${text} [${source}]`, `${isAbout ? '~' : ' '}${time.padEnd(9)} `, ' '.repeat(11));
  }
  for (const { title, items } of briefing.checklist) {
    section(title);
    for (const { role, text, source } of items)
      put(`${text} [${source}]`, `[ ] ${roleWords[role]}  `, ' '.repeat(12));
  }
  if (briefing.divisionRules.length > 0 || briefing.divisionNote !== '') {
    section('Otherwise than the standard game');
    for (const { label, text, standard } of briefing.divisionRules)
      put(`${label}: ${text} (standard: ${standard})`, '- ', '  ');
    if (briefing.divisionNote !== '') put(briefing.divisionNote, '- ', '  ');
  }
  section('The venue');
  for (const { label, text } of briefing.venue) put(`${label}: ${text}`, '- ', '  ');
  section('Safety');
  for (const { label, text } of briefing.safety) put(`${label}: ${text}`, '- ', '  ');
  for (const { text, source } of briefing.care) put(`${text} [${source}]`, '- ', '  ');
  section('If things go wrong');
  for (const { title, steps, source } of briefing.contingencies) {
    put(`${title} [${source}]`);
    steps.forEach((step, index) => put(step, `  ${index + 1}. `, '     '));
  }
  return `${lines.join('\n')}\n`;
}

function wrapped(
  text: string,
  {
    columns,
    indent,
    hanging,
  }: { readonly columns: number; readonly indent: string; readonly hanging: string },
): string[] {
  const lines: string[] = [];
  let line = indent;
  let isEmpty = true;
  for (const word of text.split(/\s+/).filter((part) => part !== '')) {
    const isTooLong = [...line].length + 1 + [...word].length > columns;
    if (!isEmpty && isTooLong) {
      lines.push(line);
      line = hanging;
      isEmpty = true;
    }
    line += isEmpty ? word : ` ${word}`;
    isEmpty = false;
  }
  return [...lines, line.trimEnd()];
}
