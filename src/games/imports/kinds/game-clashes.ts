import type { FileContext, PlannedRow } from '../import-kind';
import type { ImportRecord } from '../import-record';

interface Slot {
  readonly key: string;
  readonly game: ImportRecord;
  readonly from: number;
  readonly to: number;
}

/**
 * Notices games of the files that cannot all be played: two at once on one court, or of one team. They are taken in, because
 * lists really ask for such things and the assignor must see them to sort them out.
 */
export function checkClashes(rows: readonly PlannedRow[], context: FileContext): void {
  const games = new Map(context.state.all('games'));
  for (const { key, record } of rows) games.set(key, record);
  const slotsBySubject = new Map<string, Slot[]>();
  for (const [key, game] of games) {
    if (game['status'] === 'CANCELLED') continue;
    for (const subject of subjectsOf(game)) {
      const slots = slotsBySubject.get(subject) ?? [];
      slots.push(slotOf(key, game));
      slotsBySubject.set(subject, slots);
    }
  }
  for (const { row, key, record } of rows) {
    if (record['status'] === 'CANCELLED') continue;
    const own = slotOf(key, record);
    for (const subject of subjectsOf(record)) {
      const other = (slotsBySubject.get(subject) ?? []).find(
        (slot) => slot.key !== key && slot.from < own.to && own.from < slot.to,
      );
      if (other !== undefined)
        context.notice(
          row,
          'time',
          `${subject} has game ${other.key} at ${String(other.game['date'])} ${String(other.game['time'])} too.`,
          'move one of the two',
        );
    }
  }
}

function subjectsOf(game: ImportRecord): string[] {
  const court = game['court'] === null ? '' : `, court ${String(game['court'])}`;
  const place = game['court'] === null ? [] : [`Venue ${String(game['venue'])}${court}`];
  return [...place, `Team ${String(game['home'])}`, `Team ${String(game['away'])}`];
}

/** On the wall clock, as if it were UTC: good enough to see two games at once. */
function slotOf(key: string, game: ImportRecord): Slot {
  const from = Date.parse(`${String(game['date'])}T${String(game['time'])}:00Z`);
  return { key, game, from, to: from + Number(game['durationMinutes']) * 60_000 };
}
