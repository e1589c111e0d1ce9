import { randomUUID } from 'node:crypto';
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Command } from 'commander';
import type { Association } from '../access/association.entity';
import { ConfigurationError } from '../platform/configuration';
import { SchemaMismatchError } from '../platform/migrate';
import { Proposal } from '../slates/proposal.entity';
import { Slate } from '../slates/slate.entity';
import { slateServices, type SlateServices } from '../slates/slate-services';
import { readSlateView } from '../slates/slate-view.query';
import { buildFromTerminal } from './build-from-terminal';
import { chooseAssociation, openService, UnknownNameError, type OpenService } from './open-service';
import { chooseSlate } from './slate-choice';
import { figuresText, slateText } from './slate-text';
import { positiveNumber, wholeNumber } from './number-options';

interface SlateArguments {
  readonly association?: string;
  readonly seconds?: number;
  readonly seed?: number;
  readonly label?: string;
  readonly choose?: boolean;
  readonly key?: string;
  readonly out?: string;
}

/** What a verb works with. */
interface SlateTask {
  readonly service: OpenService;
  readonly services: SlateServices;
  readonly association: Association;
  readonly actor: { readonly associationId: string; readonly accountId: null };
}

const refused = 2;

/** The verb `slate`: open, build, show and publish slates from a terminal. */
export function slateCommand(): Command {
  const command = new Command('slate')
    .description('open, build, show and publish a slate')
    .addHelpText(
      'after',
      '\nSLATE is a name or an id; without it the next slate to come that was not published is meant, else the next to come.' +
        '\nExit codes: 0 done, 1 failed, 2 refused or not understood.',
    );
  command
    .command('open <name> <from> <to>')
    .description('open a slate with every game from one day to another (YYYY-MM-DD) that no slate has yet')
    .option('--association <slug>', associationHelp)
    .action(task(openSlate));
  command
    .command('build [slate]')
    .description('build crews and take them into the working copy; nobody is told')
    .option('--association <slug>', associationHelp)
    .option('--seconds <n>', 'time allowed (default by size: 10 to 300)', positiveNumber)
    .option('--seed <n>', 'seed of the random choices', wholeNumber)
    .option('--label <text>', 'what the proposal is called')
    .option('--no-choose', 'keep the proposal beside the working copy instead')
    .action(task(buildSlate));
  command
    .command('show [slate]')
    .description('print the games with their crews, the figures, and what stands in the way')
    .option('--association <slug>', associationHelp)
    .action(task(showSlate));
  command
    .command('publish [slate]')
    .description('tell every official concerned what the working copy says')
    .option('--association <slug>', associationHelp)
    .option('--key <text>', 'idempotency key: the same one never publishes twice (default: a new one)')
    .action(task(publishSlate));
  command
    .command('files [slate]')
    .description('write the proposal taken into the working copy as slate-problem/1 and slate-answer/1 files')
    .option('--association <slug>', associationHelp)
    .option('--out <folder>', 'folder to write problem.json and answer.json to', '.')
    .action(task(writeSlateFiles));
  return command;
}

const associationHelp = 'which association; the only one there is unless stated';

/** Opens the service around a verb; what somebody mistyped ends in a sentence instead of a trace. */
function task(work: (task: SlateTask, names: readonly string[], options: SlateArguments) => Promise<number>) {
  return async (...given: unknown[]): Promise<void> => {
    const command = given.at(-1) as Command;
    const names = given.slice(0, -2).filter((name): name is string => typeof name === 'string');
    try {
      const service = await openService({ applicationName: 'crewloom slate' });
      try {
        const options = command.opts<SlateArguments>();
        const association = await chooseAssociation(service, options.association);
        const actor = { associationId: association.id, accountId: null };
        const services = slateServices(service);
        process.exitCode = await work({ service, services, association, actor }, names, options);
      } finally {
        await service.close();
      }
    } catch (error) {
      if (error instanceof ConfigurationError || error instanceof UnknownNameError)
        command.error(error.message, { exitCode: refused });
      if (error instanceof SchemaMismatchError) command.error(error.message, { exitCode: 1 });
      throw error;
    }
  };
}

async function openSlate({ services, actor }: SlateTask, names: readonly string[]): Promise<number> {
  const [name = '', fromDate = '', toDate = ''] = names;
  const outcome = await services.createSlate.create(actor, { name, fromDate, toDate });
  switch (outcome.kind) {
    case 'created':
      console.log(`"${name}" is open with ${outcome.games} games.`);
      return 0;
    case 'name-taken':
      console.error(`There is a slate "${name}" already.`);
      return refused;
    case 'refused':
      for (const { message } of outcome.faults) console.error(message);
      return refused;
  }
}

async function buildSlate(
  context: SlateTask,
  [asked]: readonly string[],
  options: SlateArguments,
): Promise<number> {
  const { service, services, association, actor } = context;
  const slate = await chooseSlate(service, association, asked);
  const { seconds, seed, label } = options;
  const outcome = await services.requestBuild.request(actor, {
    slateId: slate.id,
    ...(seconds !== undefined && { seconds }),
    ...(seed !== undefined && { seed }),
    ...(label !== undefined && { label }),
  });
  if (outcome.kind !== 'requested') {
    for (const reason of outcome.kind === 'refused' ? outcome.reasons : ['The slate is gone.'])
      console.error(reason);
    return refused;
  }
  const build = await buildFromTerminal(services, actor, outcome.buildId);
  if (build.state === 'failed' || build.proposalId === null) {
    console.error(build.fault ?? 'The build ended without crews.');
    return 1;
  }
  if (options.choose === false) {
    console.log(`${build.label} of "${slate.name}" is kept beside the working copy.`);
    return 0;
  }
  const request = { slateId: slate.id, proposalId: build.proposalId };
  const chosen = await services.chooseProposal.choose(actor, request);
  if (chosen.kind !== 'chosen') {
    const reasons = chosen.kind === 'stale' ? chosen.reasons : ['The slate changed while it was built.'];
    for (const reason of reasons) console.error(reason);
    return 1;
  }
  const view = await viewOf(context, slate.id);
  console.log(`${build.label} of "${slate.name}":`);
  console.log(figuresText(view));
  return 0;
}

async function showSlate(context: SlateTask, [asked]: readonly string[]): Promise<number> {
  const { id } = await chooseSlate(context.service, context.association, asked);
  console.log(slateText(await viewOf(context, id)));
  return 0;
}

async function publishSlate(
  { service, services, association, actor }: SlateTask,
  [asked]: readonly string[],
  { key }: SlateArguments,
): Promise<number> {
  const slate = await chooseSlate(service, association, asked);
  const outcome = await services.publishSlate.publish(actor, {
    slateId: slate.id,
    idempotencyKey: key ?? randomUUID(),
  });
  switch (outcome.kind) {
    case 'published': {
      const { added, revised, ended } = outcome.changes;
      const what = `${added} assignments new, ${revised} changed, ${ended} ended`;
      const earlier = outcome.repeated ? ' (done before with this key)' : '';
      console.log(`"${slate.name}", publication ${outcome.number}: ${what}${earlier}.`);
      return 0;
    }
    case 'unchanged':
      console.log(`Everybody has been told what "${slate.name}" says; nothing to do.`);
      return 0;
    case 'refused':
      console.error(`"${slate.name}" is not published:`);
      for (const reason of outcome.reasons) console.error(`  ${reason}`);
      return refused;
    case 'changed':
    case 'not-found':
      console.error(`"${slate.name}" changed meanwhile; look at it again.`);
      return refused;
  }
}

/** For `solve`, `check`, `explain` and the other verbs that work on files. */
async function writeSlateFiles(
  { service, association }: SlateTask,
  [asked]: readonly string[],
  { out = '.' }: SlateArguments,
): Promise<number> {
  const slate = await chooseSlate(service, association, asked);
  const proposal = await service.tenancy.read(association.id, async (tx) => {
    const { chosenProposalId: id } = await tx.findOneByOrFail(Slate, {
      associationId: association.id,
      id: slate.id,
    });
    return id === null ? null : tx.findOneByOrFail(Proposal, { associationId: association.id, id });
  });
  if (proposal === null) {
    console.error(`No proposal has been taken into "${slate.name}" yet; build it first.`);
    return refused;
  }
  await mkdir(out, { recursive: true });
  for (const part of ['problem', 'answer'] as const) {
    const file = join(out, `${part}.json`);
    await writeFile(file, `${JSON.stringify(proposal[part], null, 1)}\n`);
    console.log(file);
  }
  return 0;
}

async function viewOf({ service, association }: SlateTask, slateId: string) {
  const view = await service.tenancy.read(association.id, (tx) => readSlateView(tx, association.id, slateId));
  if (view === null) throw new UnknownNameError('The slate is gone.');
  return view;
}
