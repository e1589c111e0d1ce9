// Goal: the verbs `repair` and `tradeoffs` from a shell: text, JSON, files, faults and exit codes. Method: the built
// command on one of the project's own instances.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { checkAnswer, type RepairReport, type SlateAnswer, type SlateProblem } from '../../../../src/solver';

const ROOT = join(__dirname, '../../../..');
const INSTANCE = join(ROOT, 'test/instances/weekend-24.json');
const instance = JSON.parse(readFileSync(INSTANCE, 'utf8')) as SlateProblem;
const folder = mkdtempSync(join(tmpdir(), 'crewloom-repair-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function crewloom(...args: string[]): { status: number | null; stdout: string; stderr: string } {
  return spawnSync(process.execPath, [join(ROOT, 'dist/src/main.js'), ...args], { encoding: 'utf8' });
}

function store(name: string, content: unknown): string {
  const file = join(folder, name);
  writeFileSync(file, JSON.stringify(content));
  return file;
}

const answerFile = join(folder, 'answer.json');
crewloom('solve', INSTANCE, '--steps', '50000', '--threads', '1', '--quiet', '--out', answerFile);
const { assignments } = JSON.parse(readFileSync(answerFile, 'utf8')) as SlateAnswer;
const official = assignments[0]!.chief!;
const events = { format: 'slate-events/1', events: [{ kind: 'officialOut', official }] };

it('tells what is broken and whom to call', () => {
  const run = crewloom('repair', INSTANCE, answerFile, store('events.json', events));
  expect(run).toMatchObject({ status: 0, stderr: '' });
  expect(run.stdout).toMatch(new RegExp(`^Broken:\\n  \\S+ \\w+: ${official} is not available`));
  expect(run.stdout).toMatch(/\n1\. [a-z ,-]+: \d+ (person|people), cost \+[\d.]+ \(.*change \+/);
  expect(run.stdout).toMatch(/\n {5}call \S+: takes \S+ (chief|umpire)/);
});

it('gives the whole report as JSON', () => {
  const run = crewloom(
    'repair',
    INSTANCE,
    answerFile,
    store('events.json', events),
    '--json',
    '--seconds',
    '20',
  );
  const { problem, alternatives } = JSON.parse(run.stdout) as RepairReport;
  expect(alternatives.length).toBeGreaterThan(1);
  const { assignments: repaired, cost } = alternatives[0]!;
  const answer = { format: 'slate-answer/1', problem: problem.name, assignments: repaired, cost };
  expect(checkAnswer(problem, { ...answer, bound: null, seconds: 0, status: 'feasible' })).toMatchObject({
    ok: true,
  });
});

it('lists the faults of the events with their paths', () => {
  const bad = { ...events, events: [{ kind: 'officialOut', official: 'nobody' }, { kind: 'rain' }] };
  const run = crewloom('repair', INSTANCE, answerFile, store('bad.json', bad));
  expect(run).toMatchObject({ status: 2, stdout: '' });
  expect(run.stderr).toMatch(/events\[0\]\.official: .*\n.*events\[1\]\.kind: .*\n2 faults/);
  expect(crewloom('repair', INSTANCE, INSTANCE, store('events.json', events)).status).toBe(2);
});

it('shows trade-offs and writes each as an answer', () => {
  const out = join(folder, 'proposals');
  const before = performance.now();
  const run = crewloom('tradeoffs', INSTANCE, '--seconds', '1.5', '--out', out);
  expect(performance.now() - before).toBeLessThan(5000);
  expect(run).toMatchObject({ status: 0, stderr: '' });
  expect(run.stdout).toMatch(/driving +development +fairness/);
  expect(run.stdout).toMatch(/as weighted/);
  const files = readdirSync(out);
  expect(files.length).toBeGreaterThanOrEqual(5);
  for (const file of files)
    expect(checkAnswer(instance, JSON.parse(readFileSync(join(out, file), 'utf8')))).toMatchObject({
      ok: true,
    });
  expect(crewloom('tradeoffs', answerFile).status).toBe(2);
});
