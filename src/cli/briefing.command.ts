import { Command } from 'commander';
import { briefingFile } from '../briefing/briefing-file';
import { briefingText } from '../briefing/briefing-text';
import { BriefingsService } from '../briefing/briefings.service';
import { withAssociation } from './with-association';

/** `crewloom briefing`: prints the pre-game sheet of a game. */
export function briefingCommand(): Command {
  return new Command('briefing')
    .description('print the pre-game sheet of a game')
    .argument('<game>', "the game's number in its competition")
    .option('--association <slug>', 'short name of the association; needed when there are several')
    .option('--html', 'as one HTML file to keep or to print, instead of text')
    .addHelpText(
      'after',
      '\nShows what an assignor sees: phone numbers and ways from home included. Exit codes: 0 printed, 2 no such game.',
    )
    .action(async (gameNumber: string, options: { association?: string; html?: true }, command: Command) => {
      await withAssociation(command, options.association, async (service, association) => {
        const sheet = await new BriefingsService(service.tenancy).byNumber(association.id, gameNumber);
        if (sheet === null) return `${association.name} has no game ${gameNumber}.`;
        const columns = Math.max(60, Math.min(100, process.stdout.columns ?? 88));
        process.stdout.write(
          options.html === true ? briefingFile(sheet, association.language) : briefingText(sheet, columns),
        );
        return null;
      });
    });
}
