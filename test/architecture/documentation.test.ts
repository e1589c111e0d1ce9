// Goal: README and DEVELOPERS say what is so. Method: their tables are read and held against the code, both ways: what the code has
// must stand there, and what stands there the code must have.
import { existsSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { readConfiguration } from '../../src/platform/configuration';
import { errorCatalogue } from '../../src/platform/error-catalogue';
import { codeIn, tableUnder } from '../support/documentation';

const read = (path: string) => readFileSync(path, 'utf8');
const readme = read('README.md');
const developers = read('DEVELOPERS.md');

/** What stands in backticks in the first cells of a table, in order. */
function namesUnder(page: string, heading: string): string[] {
  return tableUnder(page, heading).flatMap(([name]) => codeIn(name ?? ''));
}

/** Verbs in the order in which `crewloom --help` lists them. */
function verbsOfTheCommand(): string[] {
  const list = /const VERBS[^{]*\{\n([\s\S]*?)\n\};/.exec(read('src/main.ts'))?.[1] ?? '';
  const verbs = [...list.matchAll(/^ {2}'?([a-z-]+)'?: \{$/gm)].map((match) => match[1] ?? '');
  expect(verbs).toContain('solve');
  return verbs;
}

test('every error of the catalogue stands in the table with its status and log level, and no other', () => {
  const rows = tableUnder(developers, '## Errors');
  expect(rows.map((row) => row.slice(0, 3).join(' '))).toEqual(
    Object.entries(errorCatalogue).map(([code, { status, logLevel }]) => `\`${code}\` ${status} ${logLevel}`),
  );
  expect(rows.filter(([, , , meaning]) => meaning === '')).toEqual([]);
});

test('every variable of the environment stands in the table, and no other', () => {
  const schema = /const environment = z\.object\(\{\n([\s\S]*?)\n\}\);/.exec(
    read('src/platform/configuration.ts'),
  )?.[1];
  const variables = [...(schema ?? '').matchAll(/^ {2}([A-Z_]+):/gm)].map((match) => match[1] ?? '');
  expect(variables.length).toBeGreaterThan(5);
  const rows = tableUnder(readme, '## Running it for real');
  expect(rows.map(([name]) => name).sort()).toEqual(variables.map((name) => `\`${name}\``).sort());
  const defaultOf = (name: string) => codeIn(rows.find(([cell]) => cell === `\`${name}\``)?.[1] ?? '')[0];
  const unset = readConfiguration({});
  expect({
    nodeEnv: defaultOf('NODE_ENV'),
    host: defaultOf('HOST'),
    port: Number(defaultOf('PORT')),
    dataDirectory: join(process.cwd(), defaultOf('DATA_DIR') ?? ''),
    logLevel: defaultOf('LOG_LEVEL'),
  }).toEqual({
    nodeEnv: unset.nodeEnv,
    host: unset.host,
    port: unset.port,
    dataDirectory: unset.dataDirectory,
    logLevel: unset.logLevel,
  });
});

test('every verb stands in both tables, and no other; each has its file', () => {
  const verbs = verbsOfTheCommand();
  expect(namesUnder(readme, '## The `crewloom` command')).toEqual(verbs);
  const rows = tableUnder(developers, '### Verbs');
  expect([...rows.map(([verb]) => verb)].sort()).toEqual(verbs.map((verb) => `\`${verb}\``).sort());
  for (const [, file] of rows) expect(existsSync(codeIn(file ?? '')[0] ?? '')).toBe(true);
});

test('every dependency has its reason, and nothing else does', () => {
  const { dependencies, devDependencies } = JSON.parse(read('package.json')) as Record<
    'dependencies' | 'devDependencies',
    Record<string, string>
  >;
  const rows = tableUnder(developers, '## Dependencies');
  const packages = [...Object.keys(dependencies), ...Object.keys(devDependencies)];
  expect(rows.map(([name]) => name).sort()).toEqual(packages.map((name) => `\`${name}\``).sort());
  expect(rows.filter(([, reason]) => reason === '')).toEqual([]);
});

test('the rooms and their arrows are those of the import rules', () => {
  const rules = createRequire(__filename)('./import-rules.cjs') as {
    forbidden: { name: string; comment?: string }[];
  };
  const arrows = new Map(
    rules.forbidden.flatMap(({ comment }) => {
      const [, room, allowed] = /^(src\/\w+) may import (.*) and nothing else/.exec(comment ?? '') ?? [];
      return room === undefined || allowed === undefined ? [] : [[room, allowed.split(', ').sort()] as const];
    }),
  );
  expect(arrows.size).toBeGreaterThan(10);
  const drawn = tableUnder(developers, '## The house on one page').map(
    ([room, , allowed]) => [codeIn(room ?? '')[0], (allowed ?? '').split(', ').sort()] as const,
  );
  expect(new Map(drawn)).toEqual(arrows);
});

test('no term of the glossary stands there twice', () => {
  const terms = tableUnder(developers, '## Glossary').flatMap(([cell]) => (cell ?? '').split(', '));
  expect(terms.length).toBeGreaterThan(30);
  expect(terms.filter((term, index) => terms.indexOf(term) !== index)).toEqual([]);
});

test.each(['README.md', 'DEVELOPERS.md', 'seed/README.md', 'src/solver/FORMAT.md'])(
  'links of %s lead to files that exist',
  (path) => {
    const targets = [...read(path).matchAll(/\]\(([^)#\s]+)[^)]*\)/g)].map((match) => match[1] ?? '');
    const own = targets.filter((target) => !/^[a-z]+:/.test(target));
    expect(own.filter((target) => !existsSync(join(dirname(path), target)))).toEqual([]);
  },
);

test('files and folders that DEVELOPERS names exist', () => {
  const paths = codeIn(developers).filter((code) => /^(src|test|migrations|seed|\.ci)\/[\w./-]+$/.test(code));
  expect(paths.length).toBeGreaterThan(30);
  // Names that a reader is to fill in.
  const made = paths.filter((path) => path.includes('what') || path.includes('NUMBER'));
  expect(paths.filter((path) => !existsSync(path) && !made.includes(path))).toEqual([]);
});
