import { date } from '../date-cells';
import { line, nameOf, orNull } from '../import-cells';
import { defineImportKind, optional, required } from '../import-kind';

const targets = ['team', 'venue', 'otherOfficial'] as const;

/** Whom an official may not meet, and where they may not go. */
export const conflictsImport = defineImportKind({
  name: 'conflicts',
  noun: 'conflict',
  after: ['officials', 'teams', 'venues'],
  columns: {
    official: required(nameOf('officials', 'official'), 'number of the official'),
    team: optional(orNull(nameOf('teams', 'team')), null, 'code of a team that they may not officiate'),
    venue: optional(orNull(nameOf('venues', 'venue')), null, 'code of a venue where they may not go'),
    otherOfficial: optional(
      orNull(nameOf('officials', 'official')),
      null,
      'number of an official beside whom they may not work',
    ),
    reason: optional(line(200), '', 'why, for those who may see it'),
    since: optional(orNull(date()), null, 'first day on which it holds; empty for ever so far'),
    until: optional(orNull(date()), null, 'last day on which it holds; empty for good'),
  },
  keyOf: conflictKey,
  complete: (merged, context) => {
    const stated = targets.filter((target) => merged[target] !== null);
    if (stated.length !== 1)
      context.fault(
        stated[1] ?? null,
        `The line names ${stated.length} of team, venue and other_official.`,
        'name exactly one, and write a line for each',
      );
    if (merged.otherOfficial === merged.official)
      context.fault(
        'otherOfficial',
        'Nobody can be in conflict with themselves.',
        'correct one of the numbers',
      );
    if (merged.since !== null && merged.until !== null && merged.until < merged.since)
      context.fault(
        'until',
        `It is before ${merged.since}, the first day.`,
        'exchange the two or correct one',
      );
    return merged;
  },
  withdraw: () => null,
});

/** What the unique index of the table compares. */
export function conflictKey(conflict: {
  readonly official: string;
  readonly team: string | null;
  readonly venue: string | null;
  readonly otherOfficial: string | null;
  readonly since: string | null;
}): string {
  const target = targets.find((name) => conflict[name] !== null);
  const named = target === undefined ? '' : `${target} ${conflict[target]}`;
  return [conflict.official, named, conflict.since ?? ''].filter((part) => part !== '').join(' ');
}
