// Goal: the page on the solver's formats says what the solver's reader, rules, costs and exit codes say.
// Method: the reader itself is asked for its keys, by giving it objects that lack all of them and have one that nobody knows; its
// example is read, solved and checked.
import { readFileSync } from 'node:fs';
import { CHECK_EXIT } from '../../src/cli/check.command';
import { EXPLAIN_EXIT } from '../../src/cli/explain.command';
import { FRAGILITY_EXIT } from '../../src/cli/fragility.command';
import { REPAIR_EXIT } from '../../src/cli/repair.command';
import { SOLVE_EXIT } from '../../src/cli/solve.command';
import { TRADE_OFFS_EXIT } from '../../src/cli/tradeoffs.command';
import {
  checkAnswer,
  COST_TERM_RULES,
  COST_TERMS,
  HARD_RULES,
  readEvents,
  readProblem,
  solveSlate,
  type SlateAnswer,
  type SlateProblem,
} from '../../src/solver';
import { codeIn, sectionOf, tableUnder } from '../support/documentation';

const page = readFileSync('src/solver/FORMAT.md', 'utf8');

/** The keys that the reader knows, by the object they stand in. */
function knownKeys(): Map<string, string[]> {
  const stranger = { stranger: 0 };
  const document = {
    ...stranger,
    policy: { ...stranger, weights: stranger },
    travel: { ...stranger, circuity: 1, legs: [stranger] },
    places: [stranger],
    divisions: [stranger],
    officials: [stranger],
    games: [{ ...stranger, locked: stranger, published: stranger }],
  };
  const read = readProblem(document);
  const faults = read.ok ? [] : read.faults;
  return new Map(
    faults.flatMap(({ path, remedy }) => {
      const known = /known here: (.*)\.$/.exec(remedy)?.[1];
      const place = path.replace(/\.?stranger$/, '').replaceAll('[0]', '');
      return known === undefined ? [] : [[place, known.split(', ')] as const];
    }),
  );
}

/** The page's own problem and answer. */
function example(): { problem: SlateProblem; answer: SlateAnswer } {
  const [problem, answer] = [...page.matchAll(/```json\n([\s\S]*?)```/g)].map(
    (block) => JSON.parse(block[1] ?? '') as unknown,
  );
  const read = readProblem(problem);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return { problem: read.problem, answer: answer as SlateAnswer };
}

function keysUnder(heading: string): string[] {
  return tableUnder(page, heading).flatMap(([key]) => codeIn(key ?? ''));
}

test('every key of the problem is described, and no other', () => {
  const known = knownKeys();
  expect([...known.keys()].sort()).toEqual(
    [
      '',
      'divisions',
      'games',
      'games.locked',
      'games.published',
      'officials',
      'places',
      'policy',
      'policy.weights',
      'travel',
      'travel.legs',
    ].sort(),
  );
  expect(keysUnder('### The document').sort()).toEqual([...(known.get('') ?? [])].sort());
  for (const section of ['policy', 'travel', 'divisions', 'officials', 'games']) {
    expect(keysUnder(`### \`${section}\``).sort()).toEqual([...(known.get(section) ?? [])].sort());
  }
  for (const section of ['policy', 'travel', 'places', 'games']) {
    const described = codeIn(sectionOf(page, `### \`${section}\``));
    const inside = [...known].flatMap(([place, keys]) =>
      place === section || place.startsWith(`${section}.`) ? keys : [],
    );
    expect(inside.filter((key) => !described.includes(key))).toEqual([]);
  }
});

test('every rule and every cost term is described in its order, and no other', () => {
  const order = (id: string) => Number(id.slice(1));
  const rules = HARD_RULES.map(({ id }) => id).sort((a, b) => order(a) - order(b));
  expect(tableUnder(page, '## Rules').map(([id]) => id)).toEqual(rules);
  expect(keysUnder('## Costs')).toEqual([...COST_TERMS]);
  expect(COST_TERM_RULES.map(({ id }) => id)).toEqual([...COST_TERMS]);
});

test('every kind of event is described with its keys, and no other', () => {
  const { problem } = example();
  const faultsOf = (event: object) => {
    const read = readEvents({ format: 'slate-events/1', events: [event] }, problem);
    return read.ok ? [] : read.faults;
  };
  const knownIn = (event: object) =>
    faultsOf(event).flatMap(({ remedy }) => /known here: (.*)\.$/.exec(remedy)?.[1]?.split(', ') ?? []);
  const kinds = /one of (.*)/.exec(faultsOf({ kind: 'stranger' })[0]?.problem ?? '')?.[1]?.split(', ') ?? [];
  const rows = tableUnder(page, '## Events').map(([kind, keys]) => [
    codeIn(kind ?? '')[0],
    codeIn(keys ?? ''),
  ]);
  expect(rows).toEqual(
    kinds.map((kind) => [kind, knownIn({ kind, stranger: 0 }).filter((key) => key !== 'kind')]),
  );
  const limits = knownIn({ kind: 'limitsChanged', official: 'Bo', limits: { stranger: 0 } });
  expect(limits).toHaveLength(8);
  expect(codeIn(sectionOf(page, '## Events'))).toEqual(expect.arrayContaining(limits));
});

test('every exit code is described, and no other', () => {
  const written = tableUnder(page, '## Exit codes').map(([verb, code]) => `${verb} ${code}`);
  const exits = {
    solve: SOLVE_EXIT,
    check: CHECK_EXIT,
    explain: EXPLAIN_EXIT,
    fragility: FRAGILITY_EXIT,
    repair: REPAIR_EXIT,
    tradeoffs: TRADE_OFFS_EXIT,
  };
  const real = Object.entries(exits).flatMap(([verb, codes]) =>
    Object.values(codes).map((code) => `\`${verb}\` ${code}`),
  );
  expect(written).toEqual(real);
});

test('the example is read, solved and answered as the page says', async () => {
  const { problem, answer } = example();
  expect(keysUnder('## The answer').filter((key) => !Object.hasOwn(answer, key))).toEqual([
    'lockViolations',
    'meta',
  ]);
  expect(checkAnswer(problem, answer)).toMatchObject({ ok: true, seats: { filled: 4, open: 0 } });
  const found = await solveSlate(problem, { nowSeconds: () => 0, steps: 20_000 });
  expect(found.assignments).toEqual(answer.assignments);
  expect(found.cost.total).toBeCloseTo(answer.cost.total, 6);
});
