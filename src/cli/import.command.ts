import { readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import { Command, InvalidArgumentError } from 'commander';
import { ownKinds } from '../games/imports/import-kinds';
import type { ImportFile } from '../games/imports/import-plan';
import { ImportsService, type ImportOptions } from '../games/imports/imports.service';
import { isCalendarDay } from '../platform/calendar-day';
import { ConfigurationError } from '../platform/configuration';
import { SchemaMismatchError } from '../platform/migrate';
import { crewsKind } from '../slates/import-crews';
import { faultText, outcomeText, planText } from './import-text';
import { chooseAssociation, openService, UnknownNameError } from './open-service';

const kindNames = [...ownKinds, crewsKind].map(({ kind }) => kind.name);
/** In place of a kind: each file's name begins with its kind. */
const byName = 'by-name';
const badInput = 2;

interface ImportArguments {
  readonly association?: string;
  readonly dryRun?: true;
  readonly whole?: true;
  readonly from?: string;
  readonly to?: string;
  readonly full?: true;
}

/** `crewloom import KIND FILE…`: takes lists in, all or nothing. */
export function importCommand(): Command {
  return new Command('import')
    .description('take lists in from CSV files; nothing is stored while any fault stands')
    .argument('<kind>', `${kindNames.join(', ')}, or ${byName} when each file's name begins with its kind`)
    .argument('<file...>', 'CSV files, UTF-8')
    .option('--association <slug>', 'which association; the only one there is unless stated')
    .option('--dry-run', 'only show what would be added, changed, removed and left')
    .option(
      '--whole',
      'each file is the whole list: what it does not name is withdrawn (never what others refer to)',
    )
    .option(
      '--from <date>',
      'first day that whole lists of games cover (default: the first they name)',
      calendarDay,
    )
    .option('--to <date>', 'last day, likewise', calendarDay)
    .option('--full', 'name every object that is added')
    .addHelpText(
      'after',
      '\nseed/README.md describes the columns. Exit codes: 0 done, 2 faults in the files.',
    )
    .action(async (kind: string, paths: string[], options: ImportArguments, command: Command) => {
      try {
        process.exitCode = await importFiles(await readFiles(kind, paths), options);
      } catch (error) {
        if (
          error instanceof ConfigurationError ||
          error instanceof UnknownNameError ||
          error instanceof UnreadableFile
        )
          command.error(error.message, { exitCode: badInput });
        if (error instanceof SchemaMismatchError) command.error(error.message, { exitCode: 1 });
        throw error;
      }
    });
}

async function importFiles(files: readonly ImportFile[], options: ImportArguments): Promise<number> {
  const service = await openService({ applicationName: 'crewloom import' });
  try {
    const association = await chooseAssociation(service, options.association);
    const imports = new ImportsService(service.tenancy, service.clock);
    imports.register(crewsKind);
    const how = importOptions(options);
    const { outcome, plan } =
      options.dryRun === true
        ? { outcome: 'planned' as const, plan: await imports.plan(association.id, files, how) }
        : await imports.apply(association.id, files, how);
    if (plan.faults.length > 0) console.error(faultText(plan));
    else console.log(planText(plan, { full: options.full === true }));
    (plan.faults.length > 0 ? console.error : console.log)(outcomeText(plan, outcome));
    return plan.faults.length > 0 ? badInput : 0;
  } finally {
    await service.close();
  }
}

function importOptions({ whole, from, to }: ImportArguments): ImportOptions {
  const range = from === undefined || to === undefined ? {} : { range: { fromDate: from, toDate: to } };
  if ((from === undefined) !== (to === undefined))
    throw new UnknownNameError('--from and --to belong together; state both or neither.');
  return { whole: whole === true, ...range };
}

/** A file, or what kind it is, that nothing can be read from. */
class UnreadableFile extends Error {}

async function readFiles(kind: string, paths: readonly string[]): Promise<ImportFile[]> {
  if (kind !== byName && !kindNames.includes(kind))
    throw new UnreadableFile(
      `"${kind}" is no kind of list; use one of ${[...kindNames, byName].join(', ')}.`,
    );
  const files: ImportFile[] = [];
  for (const path of paths) {
    const bytes = await readFile(path).catch((error: unknown) => {
      throw new UnreadableFile(
        `${path} cannot be read: ${error instanceof Error ? error.message : 'unknown'}`,
      );
    });
    files.push({ kind: kind === byName ? kindOfFile(path) : kind, name: path, bytes });
  }
  return files;
}

function kindOfFile(path: string): string {
  const name = basename(path).toLowerCase();
  const kind = kindNames.find((candidate) => name.startsWith(candidate));
  if (kind === undefined)
    throw new UnreadableFile(`${path}: its name begins with none of ${kindNames.join(', ')}.`);
  return kind;
}

function calendarDay(text: string): string {
  if (isCalendarDay(text)) return text;
  throw new InvalidArgumentError('Write a day as 2026-11-07.');
}
