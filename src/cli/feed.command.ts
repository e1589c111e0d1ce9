import { Command } from 'commander';
import { PersonalFeedsService } from '../calendar/personal-feeds.service';
import { Official } from '../roster/official.entity';
import { withAssociation } from './with-association';

/** `crewloom feed`: prints an official's calendar feed. */
export function feedCommand(): Command {
  return new Command('feed')
    .description("print an official's calendar feed (RFC 5545), as their calendar program would receive it")
    .argument('<official>', "the official's number in the association")
    .option('--association <slug>', 'short name of the association; needed when there are several')
    .addHelpText('after', '\nExit codes: 0 printed, 2 no such official.')
    .action(async (number: string, options: { association?: string }, command: Command) => {
      await withAssociation(command, options.association, async (service, association) => {
        const { tenancy, clock, configuration } = service;
        const official = await tenancy.read(association.id, (tx) =>
          tx.findOneBy(Official, { associationId: association.id, number }),
        );
        if (official === null) return `${association.name} has no official ${number}.`;
        const publicUrl = configuration.publicUrl ?? `http://localhost:${configuration.port}`;
        const feeds = new PersonalFeedsService(tenancy, clock, () => publicUrl);
        const feed = await feeds.feedOf(association.id, official.id);
        process.stdout.write(feed?.body ?? '');
        return null;
      });
    });
}
