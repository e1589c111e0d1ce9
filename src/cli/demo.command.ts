import { Command, InvalidArgumentError } from 'commander';
import { ConfigurationError, readConfiguration } from '../platform/configuration';
import { openDatabaseAccess } from '../platform/database';
import { migrate, SchemaMismatchError } from '../platform/migrate';
import { demoAssociation } from '../demo/demo-association';
import { loadDemo } from '../demo/load-demo';
import { demoLinks, type DemoLinks } from './demo-links';
import { publishComingWeekend } from './demo-weekend';
import { openService, readAssociations, type OpenService } from './open-service';
import { startServer } from './running-server';
import { schemaPlan } from './schema-plan';
import { stopSignal, type StopSignal } from './stop-signal';

interface DemoArguments {
  readonly serve?: true;
  readonly seconds?: number;
}

/** The verb `demo`: everything from an empty folder to a published weekend, and serving it; what `npm start` runs. */
export function demoCommand(): Command {
  return new Command('demo')
    .description('load a made-up association where there is none, build and publish its coming weekend')
    .option('--serve', 'and serve it, with links to look at')
    .option('--seconds <n>', 'time to spend on the crews (default by size: 10 to 300)', positiveNumber)
    .addHelpText(
      'after',
      '\nWhat is done already is not done again; a second start is quick and changes nothing.',
    )
    .action(async (options: DemoArguments, command: Command) => {
      try {
        await runDemo(options);
      } catch (error) {
        if (error instanceof ConfigurationError) command.error(error.message, { exitCode: 2 });
        if (error instanceof SchemaMismatchError) command.error(error.message, { exitCode: 1 });
        if ((error as NodeJS.ErrnoException).code === 'EADDRINUSE') {
          command.error('The port that PORT names is taken.', { exitCode: 1 });
        }
        throw error;
      }
    });
}

async function runDemo(options: DemoArguments): Promise<void> {
  const stop = stopSignal();
  // A line for each request would bury the links; whoever wants them says so.
  process.env['LOG_LEVEL'] ??= 'warn';
  const service = await openMigrated();
  try {
    const associationId = await ensureDemo(service);
    if (associationId === null) say('The database holds other associations; the demo stays out of it.');
    else if (!stop.isAsked()) await publishComingWeekend(service, associationId, { ...options, say, answer });
    if (options.serve === true && !stop.isAsked()) await serve(service, associationId, stop);
  } finally {
    await service.close();
    if (stop.isAsked()) say('Stopped.');
  }
}

/** Starts the database, brings it to this version's schema, and opens it before anybody lets it go again. */
async function openMigrated(): Promise<OpenService> {
  const onProgress = (step: string) => say(`Postgres: ${step}`);
  const access = await openDatabaseAccess(readConfiguration(process.env), onProgress);
  try {
    const applied = await migrate(access.ownerUrl, schemaPlan);
    say(applied.length === 0 ? 'Schema: current' : `Schema: ${applied.length} migrations applied`);
    return await openService({ applicationName: 'crewloom demo' });
  } finally {
    await access.release();
  }
}

/** @returns the demo's association; `null` where others live in the database and the demo does not */
async function ensureDemo(service: OpenService): Promise<string | null> {
  const associations = await readAssociations(service);
  const found = associations.find(({ slug }) => slug === demoAssociation.slug);
  if (found !== undefined) {
    say('Demo: loaded before');
    return found.id;
  }
  if (associations.length > 0) return null;
  const outcome = await loadDemo(service, { onProgress: (step) => say(`Demo: ${step}`) });
  if (outcome.kind === 'loaded') {
    const counts = Object.entries(outcome.objects).map(([kind, count]) => `${count} ${kind}`);
    say(`Demo: ${counts.join(', ')}`);
  }
  return outcome.associationId;
}

async function serve(service: OpenService, associationId: string | null, stop: StopSignal): Promise<void> {
  const server = await startServer(service, { work: true });
  try {
    console.log(`\nServing at ${server.url}; Ctrl-C stops.`);
    if (associationId !== null) {
      printLinks(await demoLinks(service, { associationId, url: server.url, signIn: server.signIn }));
    }
    await stop.asked;
    say('\nStopping.');
  } finally {
    await server.stop();
  }
}

function printLinks(links: DemoLinks): void {
  const { desk, official } = links;
  const lines: [label: string, address: string][] = [
    ...(desk === null
      ? []
      : [['The desk, as the assignor (works once, within 15 minutes)', desk] as [string, string]]),
    ...(official === null
      ? []
      : ([
          [`Calendar feed of ${official.name}`, official.feed],
          [`Briefing of ${official.name}'s next game (works once, within 15 minutes)`, official.briefing],
        ] as [string, string][])),
    ['The API', links.api],
  ];
  for (const [label, address] of lines) console.log(`\n${label}:\n  ${address}`);
  if (official === null) console.log('\nNobody has a coming game, so there is no feed or briefing to show.');
}

function say(text: string): void {
  console.error(text);
}

function answer(text: string): void {
  console.log(text);
}

function positiveNumber(text: string): number {
  const value = Number(text);
  if (!(value > 0 && value <= 3600))
    throw new InvalidArgumentError('give a number of seconds above 0, at most 3600');
  return value;
}
