// Goal: the drawing of the house stays true, and the alarms that guard it still ring.
// Method: the real rules over the real source find nothing; the same rules over files that are wrong on purpose find every fault.
import { execFile } from 'node:child_process';
import { join, resolve } from 'node:path';

const canary = resolve('test/architecture/canary');

interface Violation {
  readonly from: string;
  readonly rule: { readonly name: string; readonly severity: string };
}

/** Runs a tool of node_modules and returns what it printed, whatever its exit code. */
function runTool(script: string, args: readonly string[], cwd: string): Promise<string> {
  return new Promise((done, fail) => {
    execFile(
      process.execPath,
      [resolve('node_modules', script), ...args],
      { cwd, maxBuffer: 50_000_000 },
      (error, stdout, stderr) => {
        if (stdout === '') fail(new Error(`${script} printed nothing. ${error?.message ?? ''} ${stderr}`));
        else done(stdout);
      },
    );
  });
}

async function importFaults(cwd: string, folders: readonly string[]) {
  const config = resolve('test/architecture/import-rules.cjs');
  const args = ['--config', config, '--output-type', 'json', ...folders];
  const printed = await runTool('dependency-cruiser/bin/dependency-cruise.mjs', args, cwd);
  const { summary } = JSON.parse(printed) as { summary: { violations: Violation[]; totalCruised: number } };
  const errors = summary.violations.filter(({ rule }) => rule.severity === 'error');
  return {
    filesSeen: summary.totalCruised,
    faults: [...new Set(errors.map(({ from, rule }) => `${from}: ${rule.name}`))].sort(),
  };
}

test('the source keeps to the import rules', async () => {
  const { faults, filesSeen } = await importFaults(process.cwd(), ['src', 'migrations']);
  expect(faults).toEqual([]);
  expect(filesSeen).toBeGreaterThan(50);
}, 60_000);

test('the import rules catch every canary', async () => {
  const { faults } = await importFaults(canary, ['src']);
  // A circle is reported once, from whichever of its files comes first.
  expect(faults.filter((fault) => fault.endsWith(': no-circles'))).toHaveLength(1);
  expect(faults.filter((fault) => !fault.endsWith(': no-circles'))).toEqual([
    'src/access/account.ts: access-imports',
    'src/platform/knows-a-feature.ts: platform-imports',
    'src/slates/slate.ts: solver-has-one-door',
    'src/solver/reads-database.ts: solver-imports',
    'src/solver/reads-database.ts: solver-is-pure',
    'src/web/knows-a-feature.ts: web-imports',
  ]);
}, 60_000);

test('the solver canary is caught for the database as well as for the files', async () => {
  const config = resolve('test/architecture/import-rules.cjs');
  const printed = await runTool(
    'dependency-cruiser/bin/dependency-cruise.mjs',
    ['--config', config, '--output-type', 'json', 'src/solver'],
    canary,
  );
  const { summary } = JSON.parse(printed) as { summary: { violations: (Violation & { to: string })[] } };
  const impure = summary.violations.filter(({ rule }) => rule.name === 'solver-is-pure').map(({ to }) => to);
  expect(impure.some((to) => to.includes('node_modules/typeorm'))).toBe(true);
  expect(impure).toContain('fs');
}, 60_000);

test('the lint catches every canary', async () => {
  const config = resolve('test/architecture/eslint.config.mjs');
  const args = ['-c', config, '--format', 'json', 'src/lint-canary.ts'];
  const printed = await runTool(join('eslint', 'bin', 'eslint.js'), args, canary);
  const [file] = JSON.parse(printed) as { messages: { ruleId: string; severity: number }[] }[];
  const caught = new Set(
    file?.messages.filter(({ severity }) => severity === 2).map(({ ruleId }) => ruleId) ?? [],
  );
  expect([...caught].sort()).toEqual([
    '@typescript-eslint/no-explicit-any',
    '@typescript-eslint/no-floating-promises',
    '@typescript-eslint/switch-exhaustiveness-check',
    'eqeqeq',
    'no-console',
    'no-restricted-properties',
  ]);
}, 60_000);
