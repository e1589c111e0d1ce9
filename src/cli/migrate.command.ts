import { Command } from 'commander';
import { ConfigurationError, readConfiguration } from '../platform/configuration';
import { openDatabaseAccess } from '../platform/database';
import { migrate, SchemaMismatchError } from '../platform/migrate';
import { schemaPlan } from './schema-plan';

/** `crewloom migrate`: brings the database to the schema of this version. */
export function migrateCommand(): Command {
  return new Command('migrate')
    .description('bring the database to the schema of this version; doing it again changes nothing')
    .option('--lock-timeout <seconds>', 'how long to wait for another process that migrates', '60')
    .addHelpText(
      'after',
      '\nWorks on DATABASE_URL, or on the built-in Postgres below DATA_DIR when that is not set.',
    )
    .action(async (options: { lockTimeout: string }, command: Command) => {
      const seconds = Number(options.lockTimeout);
      if (!(seconds > 0))
        command.error('--lock-timeout must be a number of seconds above 0', { exitCode: 2 });
      try {
        await migrateFromTerminal(seconds * 1000);
      } catch (error) {
        if (error instanceof ConfigurationError) command.error(error.message, { exitCode: 2 });
        if (error instanceof SchemaMismatchError) command.error(error.message, { exitCode: 1 });
        throw error;
      }
    });
}

async function migrateFromTerminal(lockTimeoutMs: number): Promise<void> {
  const say = (step: string) => process.stderr.write(`${step}\n`);
  const access = await openDatabaseAccess(readConfiguration(process.env), (step) => say(`Postgres: ${step}`));
  try {
    const applied = await migrate(access.ownerUrl, schemaPlan, {
      lockTimeoutMs,
      onProgress: (name) => say(`applied ${name}`),
    });
    say(
      applied.length === 0
        ? 'The schema is current; nothing to do.'
        : `${applied.length} migrations applied.`,
    );
  } finally {
    await access.release();
  }
}
