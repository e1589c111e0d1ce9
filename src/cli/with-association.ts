import type { Command } from 'commander';
import type { Association } from '../access/association.entity';
import { ConfigurationError } from '../platform/configuration';
import { SchemaMismatchError } from '../platform/migrate';
import { chooseAssociation, openService, UnknownNameError, type OpenService } from './open-service';

/**
 * Opens the service for a command that looks something up in one association, and closes it again. What cannot
 * be found ends the command with exit code 2 and a sentence on standard error.
 *
 * @param work answers null when it is done, or says what is not there
 */
export async function withAssociation(
  command: Command,
  slug: string | undefined,
  work: (service: OpenService, association: Association) => Promise<string | null>,
): Promise<void> {
  let complaint: string | null;
  try {
    const service = await openService();
    try {
      complaint = await work(service, await chooseAssociation(service, slug));
    } finally {
      await service.close();
    }
  } catch (error) {
    if (error instanceof ConfigurationError || error instanceof UnknownNameError) complaint = error.message;
    else if (error instanceof SchemaMismatchError) command.error(error.message, { exitCode: 1 });
    else throw error;
  }
  if (complaint !== null) command.error(complaint, { exitCode: 2 });
}
