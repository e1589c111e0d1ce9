#!/usr/bin/env node
import { Command } from 'commander';

/** A verb of the `crewloom` command; its code is loaded only when it is asked for. */
interface Verb {
  readonly summary: string;
  readonly load: () => Promise<Command>;
}

const VERBS: Readonly<Record<string, Verb>> = {
  demo: {
    summary: 'load a made-up association, build and publish its weekend, and serve it',
    load: async () => (await import('./cli/demo.command.js')).demoCommand(),
  },
  serve: {
    summary: 'answer browsers, programs and calendars, and work on builds and mail',
    load: async () => (await import('./cli/serve.command.js')).serveCommand(),
  },
  association: {
    summary: 'open an association and give its people their roles',
    load: async () => (await import('./cli/association.command.js')).associationCommand(),
  },
  'sign-in': {
    summary: 'print a one-time link that signs somebody in',
    load: async () => (await import('./cli/sign-in.command.js')).signInCommand(),
  },
  solve: {
    summary: 'find the best legal crews for a slate problem file',
    load: async () => (await import('./cli/solve.command.js')).solveCommand(),
  },
  check: {
    summary: 'judge a slate answer against its problem',
    load: async () => (await import('./cli/check.command.js')).checkCommand(),
  },
  explain: {
    summary: 'say why a seat is held by one official and not another, or why it is open',
    load: async () => (await import('./cli/explain.command.js')).explainCommand(),
  },
  fragility: {
    summary: 'say which seats and officials a slate hangs on',
    load: async () => (await import('./cli/fragility.command.js')).fragilityCommand(),
  },
  repair: {
    summary: 'mend a published slate with the fewest phone calls',
    load: async () => (await import('./cli/repair.command.js')).repairCommand(),
  },
  tradeoffs: {
    summary: 'find slates that trade driving against development against fairness',
    load: async () => (await import('./cli/tradeoffs.command.js')).tradeOffsCommand(),
  },
  migrate: {
    summary: 'bring the database to the schema of this version',
    load: async () => (await import('./cli/migrate.command.js')).migrateCommand(),
  },
  import: {
    summary: 'take lists in from CSV files',
    load: async () => (await import('./cli/import.command.js')).importCommand(),
  },
  slate: {
    summary: 'open, build, show and publish a slate',
    load: async () => (await import('./cli/slate.command.js')).slateCommand(),
  },
  work: {
    summary: 'take builds and mail from the queue',
    load: async () => (await import('./cli/work.command.js')).workCommand(),
  },
  feed: {
    summary: "print an official's calendar feed",
    load: async () => (await import('./cli/feed.command.js')).feedCommand(),
  },
  briefing: {
    summary: 'print the pre-game sheet of a game',
    load: async () => (await import('./cli/briefing.command.js')).briefingCommand(),
  },
};

async function main(argv: readonly string[]): Promise<void> {
  const program = new Command('crewloom').description(
    'crew assignment and scheduling for referee associations',
  );
  const asked = argv[2] !== undefined && Object.hasOwn(VERBS, argv[2]) ? VERBS[argv[2]] : undefined;
  if (asked !== undefined) {
    program.addCommand(await asked.load());
  } else {
    // Without a verb only the summaries are needed, so that help never loads the whole service.
    for (const [name, { summary }] of Object.entries(VERBS)) program.command(name).description(summary);
  }
  await program.parseAsync([...argv]);
}

void main(process.argv).catch((error: unknown) => {
  process.stderr.write(`${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`);
  process.exitCode = 1;
});
