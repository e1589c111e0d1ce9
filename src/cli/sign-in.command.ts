import { Command } from 'commander';
import { localPath } from '../access/local-path';
import { Sessions } from '../access/sessions';
import { linkMinutes, SignIn } from '../access/sign-in';
import { NoSignInMailer } from '../access/sign-in-mailer';
import { ConfigurationError } from '../platform/configuration';
import { SchemaMismatchError } from '../platform/migrate';
import { newToken } from '../platform/random';
import { openService } from './open-service';

/** The verb `sign-in`: a one-time link for somebody, on the operator's own terminal. */
export function signInCommand(): Command {
  return new Command('sign-in')
    .description(
      'print a one-time link that signs somebody in; for the first administrator, or while no mail leaves',
    )
    .argument('<email>', 'address of an account')
    .option('--next <path>', 'page to go to after signing in', '/')
    .action(async (email: string, { next }: { next: string }, command: Command) => {
      try {
        const link = await makeLink(email, next);
        if (link === null) {
          command.error(`No account has the address ${email}, or five links for it are still good.`, {
            exitCode: 2,
          });
        }
        console.log(link);
        console.error(`It works once, within ${linkMinutes} minutes. Give it to nobody else.`);
      } catch (error) {
        if (error instanceof ConfigurationError) command.error(error.message, { exitCode: 2 });
        if (error instanceof SchemaMismatchError) command.error(error.message, { exitCode: 1 });
        throw error;
      }
    });
}

async function makeLink(email: string, next: string): Promise<string | null> {
  const service = await openService({ applicationName: 'crewloom sign-in' });
  try {
    const { tenancy, clock, log, configuration } = service;
    const { publicUrl, port } = configuration;
    const signIn = new SignIn({
      tenancy,
      clock,
      log,
      sessions: new Sessions(tenancy, clock, newToken),
      mailer: new NoSignInMailer(log),
      publicUrl: () => publicUrl ?? `http://localhost:${port}`,
      newSecret: newToken,
    });
    return await signIn.linkFor(email, localPath(next));
  } finally {
    await service.close();
  }
}
