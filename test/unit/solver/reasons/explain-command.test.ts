// Goal: the verbs `explain` and `fragility` from a shell: text, JSON, messages and exit codes. Method: the built command on
// one of the project's own instances with an answer of its own, and on wrong arguments.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import {
  readProblem,
  solveSlate,
  type Fragility,
  type OpenSeatReason,
  type Remedy,
  type SeatExplanation,
  type SlateAnswer,
} from '../../../../src/solver';

const ROOT = join(__dirname, '../../../..');
const INSTANCE = join(ROOT, 'test/instances/scarce-chiefs-30.json');
const folder = mkdtempSync(join(tmpdir(), 'crewloom-explain-'));
const ANSWER = join(folder, 'answer.json');
let answer: SlateAnswer;

beforeAll(async () => {
  const read = readProblem(JSON.parse(readFileSync(INSTANCE, 'utf8')));
  if (!read.ok) throw new Error('the instance is sound');
  answer = await solveSlate(read.problem, { nowSeconds: () => 0, steps: 100_000 });
  writeFileSync(ANSWER, JSON.stringify(answer));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function crewloom(...args: string[]): { status: number | null; stdout: string; stderr: string } {
  return spawnSync(process.execPath, [join(ROOT, 'dist/src/main.js'), ...args], { encoding: 'utf8' });
}

it('explains a held seat: its holder, those who may, those who may not', () => {
  const { game, umpire } = answer.assignments.find(({ chief, umpire }) => chief !== null && umpire !== null)!;
  const run = crewloom('explain', INSTANCE, ANSWER, '--game', game, '--seat', 'umpire');
  expect(run).toMatchObject({ status: 0, stderr: '' });
  expect(run.stdout).toContain(`${game} umpire: held by ${umpire}`);
  expect(run.stdout).toMatch(/May not \(\d+\):/);
  expect(run.stdout).toMatch(/H\d+ .*(asks for level|minutes|available|at most)/);
});

it('explains an open seat with its reasons and remedies, as text and as JSON', () => {
  const { game } = answer.assignments.find(({ chief }) => chief === null)!;
  const args = [
    'explain',
    INSTANCE,
    ANSWER,
    '--game',
    game,
    '--seat',
    'chief',
    '--remedies',
    '--steps',
    '8192',
  ];
  const text = crewloom(...args);
  expect(text.status).toBe(0);
  expect(text.stdout).toMatch(/Open because|It need not be open/);
  expect(text.stdout).toMatch(/each solved again|No single change/);
  const json = crewloom(...args, '--json');
  expect(json.status).toBe(0);
  const document = JSON.parse(json.stdout) as SeatExplanation & {
    readonly open: OpenSeatReason;
    readonly remedies: readonly Remedy[];
  };
  expect(document.place).toEqual({ game, seat: 'chief' });
  expect(document.holder).toBeNull();
  expect(document.open.kind).not.toBe('kept-open');
  for (const { openSeats, filledBy } of document.remedies) {
    expect(openSeats).toBeLessThan(
      answer.assignments.filter(({ chief, umpire }) => !chief || !umpire).length * 2,
    );
    expect(text.stdout).toContain(filledBy);
  }
});

it('puts one official there and solves again', () => {
  const { game, chief, umpire } = answer.assignments.find(
    ({ chief, umpire }) => chief !== null && umpire !== null,
  )!;
  const args = ['--game', game, '--seat', 'chief', '--reoptimise', '--official', chief!, '--steps', '4096'];
  expect(crewloom('explain', INSTANCE, ANSWER, ...args).stdout).toMatch(
    /everything else solved again: [+−]\d+\.\d/,
  );
  const twice = ['--game', game, '--seat', 'chief', '--official', umpire!];
  expect(crewloom('explain', INSTANCE, ANSWER, ...twice).stdout).toContain('holds both seats of the game');
});

it('studies what the slate hangs on', () => {
  const run = crewloom('fragility', INSTANCE, ANSWER, '--steps', '4096');
  expect(run).toMatchObject({ status: 0, stderr: '' });
  expect(run.stdout).toMatch(/If they withdraw/);
  const json = JSON.parse(
    crewloom('fragility', INSTANCE, ANSWER, '--steps', '4096', '--json').stdout,
  ) as Fragility;
  if (json.kind !== 'studied') throw new Error('the slate is legal');
  expect(json.withdrawals[0]!.moreOpenSeats).toBeGreaterThanOrEqual(json.withdrawals.at(-1)!.moreOpenSeats);
  expect(json.seats).toHaveLength(2 * answer.assignments.length);
});

it.each([
  ['an unknown game', ['explain', '--game', 'nowhere', '--seat', 'chief'], /no game nowhere/],
  [
    'no official to solve around',
    ['explain', '--game', 'FIRST', '--seat', 'chief', '--reoptimise'],
    /--official/,
  ],
  [
    'an unknown official',
    ['explain', '--game', 'FIRST', '--seat', 'chief', '--official', 'x'],
    /no official x/,
  ],
])('refuses %s', (_, [verb, ...rest], message) => {
  const first = answer.assignments[0]!.game;
  const args = rest.map((word) => (word === 'FIRST' ? first : word));
  const run = crewloom(verb!, INSTANCE, ANSWER, ...args);
  expect(run.status).toBe(2);
  expect(run.stderr).toMatch(message);
});

it('refuses an answer that is none, and an illegal slate where it has to be legal', () => {
  expect(crewloom('explain', INSTANCE, INSTANCE, '--game', 'g', '--seat', 'chief').status).toBe(2);
  const holder = answer.assignments.find(({ chief }) => chief !== null)!.chief;
  const assignments = answer.assignments.map((own) => ({ ...own, chief: holder }));
  const illegal = join(folder, 'illegal.json');
  writeFileSync(illegal, JSON.stringify({ ...answer, assignments }));
  const run = crewloom('fragility', INSTANCE, illegal);
  expect(run.status).toBe(2);
  expect(run.stderr).toMatch(/the slate breaks H\d+/);
  const game = answer.assignments[0]!.game;
  const explained = crewloom('explain', INSTANCE, illegal, '--game', game, '--seat', 'chief');
  expect(explained.status).toBe(0);
  expect(explained.stdout).toMatch(/breaks H\d/);
});
