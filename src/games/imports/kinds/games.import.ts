import { resolveLocalTime } from '../../../platform/local-time';
import { date, offsetText, timeOfDay, utcOffset } from '../date-cells';
import { code, decimal, line, nameOf, oneOf, orNull, wholeNumber } from '../import-cells';
import { defineImportKind, optional, required, type RecordOf, type RowContext } from '../import-kind';
import { checkClashes } from './game-clashes';

const columns = {
  number: required(code(), "the competition's game number, by which a moved or cancelled game is recognised"),
  division: required(nameOf('divisions', 'division'), 'code of the division'),
  venue: required(nameOf('venues', 'venue'), 'code of the venue'),
  court: optional(orNull(code()), null, 'name of the court, where the venue has several'),
  date: required(date(), 'local date of tip-off'),
  time: required(timeOfDay(), "tip-off by the venue's clock"),
  utcOffset: optional(utcOffset(), null, 'which of two, where the clocks show the time twice'),
  home: required(nameOf('teams', 'team'), 'code of the home team'),
  away: required(nameOf('teams', 'team'), 'code of the visiting team'),
  durationMinutes: optional(orNull(wholeNumber(1, 600)), null, "planned length; empty takes the division's"),
  priority: optional(
    orNull(decimal(0.01, 1000)),
    null,
    "how much an open seat weighs; empty takes the division's",
  ),
  status: optional(
    oneOf<'TENTATIVE' | 'CONFIRMED' | 'CANCELLED'>(
      { TENTATIVE: 'TENTATIVE', CONFIRMED: 'CONFIRMED', CANCELLED: 'CANCELLED' },
      'TENTATIVE, CONFIRMED or CANCELLED',
    ),
    'CONFIRMED',
    'RFC 5545 status',
  ),
  note: optional(line(500), '', 'anything the crew should know'),
};

type GameLine = RecordOf<typeof columns>;

/** Games, each recognised by its number. */
export const gamesImport = defineImportKind({
  name: 'games',
  noun: 'game',
  after: ['divisions', 'teams', 'venues'],
  columns,
  keyOf: ({ number }) => number,
  complete: (merged, context) => {
    const { state } = context;
    if (merged.home === merged.away)
      context.fault('away', 'A team cannot play itself.', 'correct the home or the visiting team');
    const venue = state.get('venues', merged.venue);
    const division = state.get('divisions', merged.division);
    // What is missing here has a fault of its own, elsewhere.
    if (venue === undefined || division === undefined) return null;
    for (const side of ['home', 'away'] as const) {
      const plays = state.get('teams', merged[side])?.['division'];
      if (typeof plays === 'string' && plays !== merged.division)
        context.notice(side, `The team plays in division "${plays}".`, 'check the team and the division');
    }
    checkCourt(merged, venue['courts'], context);
    const timeZone = String(venue['timeZone']);
    const utcOffset = resolveOffset(merged, timeZone, context);
    return {
      ...merged,
      utcOffset,
      durationMinutes: merged.durationMinutes ?? Number(division['gameMinutes']),
      priority: merged.priority ?? Number(division['priority']),
      timeZone,
    };
  },
  checkAll: checkClashes,
  withdraw: (game, { records, range }) => {
    const dates = records.map((record) => record.date).sort();
    const fromDate = range?.fromDate ?? dates[0];
    const toDate = range?.toDate ?? dates.at(-1);
    if (fromDate === undefined || toDate === undefined) return undefined;
    const isCovered = fromDate <= game.date && game.date <= toDate;
    return isCovered && game.status !== 'CANCELLED' ? { ...game, status: 'CANCELLED' } : undefined;
  },
});

function checkCourt(game: GameLine, courts: unknown, context: RowContext): void {
  if (game.court === null || !Array.isArray(courts) || courts.includes(game.court)) return;
  const message = `Venue "${game.venue}" has no court "${game.court}".`;
  const known = courts.length === 0 ? 'it has none' : `it has ${courts.join(', ')}`;
  context.fault('court', message, `${known}; add the court to the list of venues or correct the name`);
}

/** The offset that decides between two readings of the local time; null where there is one reading only. */
function resolveOffset(game: GameLine, zone: string, context: RowContext): number | null {
  const resolved = resolveLocalTime({ date: game.date, time: game.time, zone });
  switch (resolved.kind) {
    case 'invalid':
      for (const { field, message } of resolved.faults)
        context.fault(field === 'zone' ? 'venue' : field, message, 'correct it');
      return null;
    case 'gap': {
      const message = `The clocks in ${zone} skip ${game.time} on ${game.date}.`;
      context.fault('time', message, `choose another time, such as ${resolved.resumesAt.time}`);
      return null;
    }
    case 'instant':
      if (game.utcOffset !== null && game.utcOffset !== resolved.offsetMinutes)
        context.fault(
          'utcOffset',
          `At that time the offset in ${zone} is ${offsetText(resolved.offsetMinutes)}.`,
          'correct it or leave it empty',
        );
      return null;
    case 'overlap': {
      const choices = [resolved.earlier.offsetMinutes, resolved.later.offsetMinutes];
      if (game.utcOffset !== null && choices.includes(game.utcOffset)) return game.utcOffset;
      context.fault(
        'utcOffset',
        `The clocks in ${zone} show ${game.time} twice on ${game.date}.`,
        `say which is meant: utc_offset ${choices.map(offsetText).join(' (the first) or ')} (the second)`,
      );
      return null;
    }
  }
}
