// Writes seed/README.md from the import kinds themselves. Run it after `npm run build` as
// `node dist/test/support/demo/seed-readme.js`; a test holds the file against this text.
import { readFileSync, writeFileSync } from 'node:fs';
import { headOf, type ImportColumn, type ImportKind } from '../../../src/games/imports/import-kind';
import type { FieldValue } from '../../../src/games/imports/import-record';
import { ownKinds } from '../../../src/games/imports/import-kinds';
import { crewsKind } from '../../../src/slates/import-crews';

const introduction = `# The lists

These CSV files are the demo: the fictional **Marram Coast** association, with invented people, teams, venues and streets. They
are also an example of every kind of list that Crewloom takes in:

    crewloom import officials my-officials.csv --dry-run     # what would happen
    crewloom import officials my-officials.csv               # do it
    crewloom import by-name venues.csv teams-2027.csv …      # several kinds, told by the beginning of each file's name

Nothing is stored while any file has a fault, and every fault is told with file, line, column, value and what to try. Importing
the same file again changes nothing.

## What a file may look like

- CSV as a spreadsheet writes it: UTF-8 with or without byte order mark; columns separated by comma, semicolon or tab; cells in
  double quotes where they hold a separator, a quote (doubled) or a line break; any line ends; blank lines anywhere. At most
  10 MB and 100,000 lines.
- The first line names the columns, in any order and case; blanks, hyphens and underscores count the same. A column nobody knows,
  one that is there twice, and a required one that is missing are faults.
- Cells are trimmed, and are text whatever they look like. An empty cell means the default below. An optional column that is
  missing leaves what is stored as it is.
- Dates are ISO 8601 (2026-11-07) or in the association's one stated format, never guessed. Times are hours and minutes, 18:30.
- A game's time that the clocks of its venue skip is refused; one that they show twice needs the column \`utc_offset\`.
- Numbers have a decimal point; a decimal comma is understood where columns are not separated by commas.
- Several values in one cell have \`|\` between them.
- Lists refer to each other by code, number or name, and several lists may come at once in any order.

## What becomes of what a file does not name

It stays as it is. With \`--whole\` a file is the whole list: games that it does not name are cancelled (on the days from its first
to its last, or \`--from\` to \`--to\`); officials, venues and teams are no longer active; conflicts and travel legs are deleted, and
so are availability rules of the officials that it names. Levels, divisions and crews stay. Nothing is deleted that something
else refers to.

## Days of the demo

So that the demo is always in the middle of its season, these files state days relative to today, and \`crewloom demo\` puts dates
in their place: \`W+1 SAT\` is the Saturday of the next weekend that has not begun, \`W-1 SUN\` the Sunday of the last one that is
over, \`D+9\` nine days from today, \`Y-16 D+40\` sixteen years ago and forty days later. Your own files state dates.
`;

const remarks: Readonly<Record<string, string>> = {
  levels: 'Recognised by level.',
  venues: 'Recognised by code. A court on which games are played cannot be left out.',
  officials:
    'Recognised by number. A minor should have a guardian who can be reached; local law decides what else is needed.',
  'travel-legs':
    'Recognised by their ends. A leg also holds for the way back unless that has a line of its own. It goes before every estimate.',
  availability:
    'Recognised by everything but `except`, `priority` and `note`. Outside every rule an official is not free. Where rules overlap, the stronger priority says what holds; at equal priority busy beats reluctant, and reluctant beats available. Times are those of the association’s zone.',
  divisions:
    'Recognised by code. The playing rules are what a briefing prints; their defaults are those of the FIBA rules.',
  teams: 'Recognised by code.',
  games: 'Recognised by number: a moved game keeps it, a cancelled one has the status CANCELLED.',
  conflicts:
    'Each line names exactly one of team, venue and other official. Recognised by whom it concerns and `since`.',
  crews: 'Recognised by game. Only games that are over: crews of coming games are made on a slate.',
};

/** One kind's chapter: its columns, and the beginning of the demo's file as an example. */
export function chapterOf(kind: ImportKind): string {
  const rows = Object.entries(kind.columns).map(([field, column]) => {
    const empty = column.required ? '**required**' : defaultText(column);
    return `| \`${headOf(field)}\` | ${escaped(column.says)} | ${escaped(column.cell.form)} | ${empty} |`;
  });
  const example = readFileSync(`seed/${kind.name}.csv`, 'utf8').split('\n').slice(0, 3).join('\n');
  return [
    `## ${kind.name}`,
    '',
    remarks[kind.name] ?? '',
    '',
    '| column | meaning | what may stand there | if empty |',
    '| --- | --- | --- | --- |',
    ...rows,
    '',
    '```csv',
    example,
    '```',
    '',
  ].join('\n');
}

export function seedReadme(): string {
  const chapters = [...ownKinds, crewsKind].map(({ kind }) => chapterOf(kind));
  return [introduction, ...chapters].join('\n');
}

function defaultText({ otherwise }: ImportColumn<FieldValue>): string {
  if (typeof otherwise === 'boolean') return otherwise ? 'yes' : 'no';
  if (otherwise === null || otherwise === '' || (Array.isArray(otherwise) && otherwise.length === 0))
    return '';
  return String(otherwise);
}

function escaped(text: string): string {
  return text.replaceAll('|', '\\|');
}

if (require.main === module) writeFileSync('seed/README.md', seedReadme());
