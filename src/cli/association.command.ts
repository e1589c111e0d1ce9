import { Command } from 'commander';
import { QueryFailedError } from 'typeorm';
import type { z } from 'zod';
import {
  newAssociationSchema,
  newMemberSchema,
  openAssociation,
  setMember,
} from '../access/open-association';
import { roles } from '../access/role';
import { ConfigurationError } from '../platform/configuration';
import { SchemaMismatchError } from '../platform/migrate';
import { openService, chooseAssociation, type OpenService } from './open-service';

interface OpenOptions {
  readonly name: string;
  readonly timeZone: string;
  readonly currency: string;
  readonly emergencyNumber: string;
  readonly administrator: string;
  readonly administratorName: string;
  readonly language?: string;
  readonly dateFormat?: string;
  readonly replyAddress?: string;
}

/** The verb `association`: opens one of your own and says who works in its office. */
export function associationCommand(): Command {
  const command = new Command('association').description(
    'open an association and give its people their roles',
  );
  command
    .command('open')
    .description('open an association; its ladder, venues, officials and games then come in by `import`')
    .argument('<slug>', 'short name for addresses, such as marram-coast')
    .requiredOption('--name <text>', 'full name')
    .requiredOption('--time-zone <zone>', 'IANA zone, such as Europe/Copenhagen')
    .requiredOption('--currency <code>', 'ISO 4217 code, such as EUR')
    .requiredOption('--emergency-number <text>', 'what to call in an emergency there')
    .requiredOption('--administrator <email>', 'who runs it, and assigns at first')
    .requiredOption('--administrator-name <text>', 'their name')
    .option('--language <tag>', 'BCP 47 tag of dates and numbers on pages')
    .option('--date-format <format>', 'the date format of your own lists, besides ISO 8601')
    .option('--reply-address <email>', 'whom officials reach by answering mail')
    .action(async (slug: string, options: OpenOptions, self: Command) => {
      const { administrator, administratorName, ...rest } = options;
      const wanted = checked(self, newAssociationSchema, {
        ...rest,
        slug,
        administrator: { email: administrator, displayName: administratorName },
      });
      await withService(self, async (service) => {
        await openAssociation(service, wanted);
        console.log(`${wanted.name} is open. Sign in with: crewloom sign-in ${wanted.administrator.email}`);
      });
    });
  command
    .command('member')
    .description('add somebody to the office of an association, or set their roles')
    .argument('<email>', 'their address')
    .requiredOption('--name <text>', 'their name, used when the address is new')
    .requiredOption(
      '--roles <list>',
      `comma-separated: ${roles.filter((role) => role !== 'official').join(', ')}`,
    )
    .option('--association <slug>', 'which association, where there are several')
    .action(
      async (
        email: string,
        { name, roles: list, association }: { name: string; roles: string; association?: string },
        self: Command,
      ) => {
        const wanted = checked(self, newMemberSchema, {
          email,
          displayName: name,
          roles: list.split(',').map((role) => role.trim()),
        });
        await withService(self, async (service) => {
          const { id, name: associationName } = await chooseAssociation(service, association);
          const { added } = await setMember(service, id, wanted);
          console.log(
            `${wanted.email} ${added ? 'now belongs' : 'belongs'} to ${associationName}: ${wanted.roles.join(', ')}`,
          );
        });
      },
    );
  return command;
}

/** The value as the schema reads it; every fault is told and ends the command with exit code 2. */
function checked<Schema extends z.ZodType>(
  command: Command,
  schema: Schema,
  value: unknown,
): z.infer<Schema> {
  const result = schema.safeParse(value);
  if (result.success) return result.data;
  const faults = result.error.issues.map(({ path, message }) => `${path.join('.')}: ${message}`);
  return command.error(faults.join('\n'), { exitCode: 2 });
}

async function withService(command: Command, work: (service: OpenService) => Promise<void>): Promise<void> {
  try {
    const service = await openService({ applicationName: 'crewloom association' });
    try {
      await work(service);
    } finally {
      await service.close();
    }
  } catch (error) {
    if (error instanceof ConfigurationError) command.error(error.message, { exitCode: 2 });
    if (error instanceof SchemaMismatchError) command.error(error.message, { exitCode: 1 });
    if (
      error instanceof QueryFailedError &&
      (error.driverError as { readonly code?: string }).code === '23505'
    )
      command.error('There is an association with this short name already.', { exitCode: 2 });
    throw error;
  }
}
