// Goal: the verbs `solve` and `check` from a shell: answer, messages and exit codes. Method: the built command on the
// project's own instances and on spoilt copies in a temporary folder.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { checkAnswer, readProblem, type SlateAnswer, type SlateProblem } from '../../../src/solver';

const ROOT = join(__dirname, '../../..');
const INSTANCE = join(ROOT, 'test/instances/weekend-24.json');
const folder = mkdtempSync(join(tmpdir(), 'crewloom-solve-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function crewloom(...args: string[]): { status: number | null; stdout: string; stderr: string } {
  return spawnSync(process.execPath, [join(ROOT, 'dist/src/main.js'), ...args], { encoding: 'utf8' });
}

function store(name: string, content: unknown): string {
  const file = join(folder, name);
  const text = JSON.stringify(content);
  writeFileSync(file, name.endsWith('.gz') ? gzipSync(text) : text);
  return file;
}

const instance = JSON.parse(readFileSync(INSTANCE, 'utf8')) as SlateProblem;

it('solves a file to standard output, the same each time but for the seconds', () => {
  const run = () =>
    crewloom('solve', INSTANCE, '--steps', '50000', '--threads', '2', '--seed', '3', '--quiet');
  const [first, second] = [run(), run()];
  expect(first).toMatchObject({ status: 0, stderr: '' });
  const withoutSeconds = (text: string) => text.replace(/"seconds":[\d.]+/, '');
  expect(withoutSeconds(first.stdout)).toBe(withoutSeconds(second.stdout));
  expect(checkAnswer(instance, JSON.parse(first.stdout))).toMatchObject({ ok: true });
});

it('solves a gzipped file into a file within the time allowed, and check agrees', () => {
  const problem = store('problem.json.gz', instance);
  const out = join(folder, 'answer.json');
  const before = performance.now();
  const run = crewloom('solve', problem, '--seconds', '1.5', '--out', out);
  expect(performance.now() - before).toBeLessThan(3500);
  expect(run).toMatchObject({ status: 0, stdout: '' });
  expect(run.stderr).toMatch(/\d+ of 48 seats filled, cost [\d.]+/);
  const check = crewloom('check', problem, out);
  expect(check.status).toBe(0);
  expect(check.stdout).toMatch(/\nsound\n$/);
  const answer = JSON.parse(readFileSync(out, 'utf8')) as SlateAnswer;
  const wrong = store('wrong.json', { ...answer, cost: { ...answer.cost, travel: 0 } });
  expect(crewloom('check', problem, wrong)).toMatchObject({ status: 1 });
});

it('lists all faults of a bad file', () => {
  const games = instance.games.map((game) => ({ ...game, priority: 0 }));
  const run = crewloom('solve', store('bad.json', { ...instance, timeZone: 'Mars/Base', games }));
  expect(run.status).toBe(2);
  expect(run.stderr).toMatch(/timeZone: /);
  expect(run.stderr).toMatch(/games\[23\]\.priority: /);
  expect(run.stderr).toMatch(/25 faults/);
});

it.each([
  ['no file', ['solve', join(folder, 'none.json')]],
  ['no JSON', ['solve', join(ROOT, 'LICENSE')]],
  ['an answer that is none', ['check', INSTANCE, INSTANCE]],
])('refuses %s', (_, args) => {
  expect(crewloom(...args).status).toBe(2);
});

it('names the rule that locks break', () => {
  const chief = instance.officials.find((official) => !official.mayBeChief)!.id;
  const games = instance.games.map((game, i) => (i === 0 ? { ...game, locked: { chief } } : game));
  const problem = { ...instance, games };
  expect(readProblem(problem).ok).toBe(true);
  const run = crewloom('solve', store('locked.json', problem), '--quiet');
  expect(run.status).toBe(3);
  expect(run.stderr).toMatch(/locks break H1/);
  expect(checkAnswer(problem, JSON.parse(run.stdout))).toMatchObject({ ok: true });
});
