import { randomUUID } from 'node:crypto';
import { In, IsNull } from 'typeorm';
import { Game } from '../games/game.entity';
import { gameStart } from '../games/game-start';
import { nameOf, orNull } from '../games/imports/import-cells';
import {
  defineImportKind,
  optional,
  required,
  type FileContext,
  type PlannedRow,
} from '../games/imports/import-kind';
import type { StoredKind } from '../games/imports/import-kinds';
import { insertAll, updatesOf, type ImportStore } from '../games/imports/import-store';
import { Official } from '../roster/official.entity';
import { Assignment } from './assignment.entity';
import { seatNames, type SeatName } from './seat-name';

const kindName = 'crews';
const minuteMs = 60_000;

/** Who officiated games that are over: the history from which a first season starts. */
const crewsImport = defineImportKind({
  name: kindName,
  noun: 'crew',
  after: ['games', 'officials'],
  columns: {
    game: required(nameOf('games', 'game'), 'number of the game'),
    chief: optional(orNull(nameOf('officials', 'official')), null, 'number of the crew chief'),
    umpire: optional(orNull(nameOf('officials', 'official')), null, 'number of the umpire'),
  },
  keyOf: ({ game }) => game,
  complete: (merged, context, existing) => {
    const game = context.state.get('games', merged.game);
    if (game === undefined) return null;
    if (String(game['date']) >= context.today)
      context.fault('game', 'The game is not over.', 'make the crews of coming games on a slate');
    if (game['status'] === 'CANCELLED')
      context.fault('game', 'The game was cancelled, so nobody officiated it.', 'remove the line');
    if (merged.chief === null && merged.umpire === null)
      context.fault('chief', 'The line names nobody.', 'name the chief, the umpire or both');
    if (merged.chief !== null && merged.chief === merged.umpire)
      context.fault('umpire', 'Nobody holds both seats of a game.', 'correct one of the two');
    const origin = existing?.['origin'] ?? 'list';
    const isChanged = seatNames.some((seat) => existing !== undefined && existing[seat] !== merged[seat]);
    if (origin === 'slate' && isChanged)
      context.fault('game', 'This crew was published from a slate.', 'change it there, or remove the line');
    return { ...merged, origin };
  },
  checkAll: checkTwoPlaces,
});

interface Duty {
  readonly game: string;
  readonly venue: string;
  readonly from: number;
  readonly to: number;
}

/** The database forbids these too; here they are told by line. */
function checkTwoPlaces(rows: readonly PlannedRow[], context: FileContext): void {
  const crews = new Map(context.state.all(kindName));
  for (const { key, record } of rows) crews.set(key, record);
  const dutiesByOfficial = new Map<string, Duty[]>();
  for (const [key, crew] of crews) {
    const duty = dutyOf(key, context);
    if (duty === null) continue;
    for (const seat of seatNames) {
      const official = crew[seat];
      if (typeof official !== 'string') continue;
      const duties = dutiesByOfficial.get(official) ?? [];
      duties.push(duty);
      dutiesByOfficial.set(official, duties);
    }
  }
  const { arrivalLeadMinutes, wrapUpMinutes } = context.association;
  for (const { row, key, record } of rows) {
    const own = dutyOf(key, context);
    for (const seat of seatNames) {
      const official = record[seat];
      if (own === null || typeof official !== 'string') continue;
      const other = (dutiesByOfficial.get(official) ?? []).find((duty) => {
        const apart = duty.venue === own.venue ? 0 : (arrivalLeadMinutes + wrapUpMinutes) * minuteMs;
        return duty.game !== key && duty.from < own.to + apart && own.from < duty.to + apart;
      });
      if (other !== undefined)
        context.fault(
          row,
          seat,
          `Official ${official} was on duty in game ${other.game} at that time.`,
          'correct the crew of one of the two games',
        );
    }
  }
}

function dutyOf(key: string, { state }: FileContext): Duty | null {
  const game = state.get('games', key);
  if (game === undefined) return null;
  const { utcOffset, durationMinutes } = game;
  const from = gameStart({
    date: String(game['date']),
    time: String(game['time']),
    zone: String(game['timeZone']),
    utcOffset: typeof utcOffset === 'number' ? utcOffset : null,
  }).getTime();
  return { game: key, venue: String(game['venue']), from, to: from + Number(durationMinutes) * minuteMs };
}

const crewsStore: ImportStore = {
  kind: kindName,
  load: async (tx, { associationId }) => {
    const assignments = await tx.findBy(Assignment, { associationId, endedAt: IsNull() });
    const numberOf = new Map([
      ...(await tx.findBy(Game, { associationId })).map(({ id, number }) => [id, number] as const),
      ...(await tx.findBy(Official, { associationId })).map(({ id, number }) => [id, number] as const),
    ]);
    const crews = new Map<string, Record<string, string | null>>();
    for (const { gameId, officialId, seat, publicationId } of assignments) {
      const game = numberOf.get(gameId) ?? '';
      const crew = crews.get(game) ?? { game, chief: null, umpire: null, origin: 'list' };
      crew[seat] = numberOf.get(officialId) ?? null;
      if (publicationId !== null) crew['origin'] = 'slate';
      crews.set(game, crew);
    }
    return crews;
  },
  store: async (tx, plan, { associationId, association, ids, now }) => {
    const changes = [
      ...plan.added.map(({ key, record }) => ({ key, before: null, record })),
      ...updatesOf(plan),
    ];
    const games = await tx.findBy(Game, {
      associationId,
      id: In(changes.map(({ key }) => ids.get('games', key))),
    });
    const gameByNumber = new Map(games.map((game) => [game.number, game]));
    const rows: ReturnType<typeof assignmentOf>[] = [];
    for (const { key, before, record } of changes) {
      const game = gameByNumber.get(key);
      if (game === undefined) throw new Error(`Game ${key} is gone.`);
      for (const seat of seatNames) {
        if (before !== null && before[seat] === record[seat]) continue;
        if (before !== null)
          await tx.update(
            Assignment,
            { associationId, gameId: game.id, seat, endedAt: IsNull() },
            { endedAt: now, endReason: 'replaced', revisedAt: now, sequence: () => 'sequence + 1' },
          );
        const official = record[seat];
        if (typeof official !== 'string') continue;
        const officialId = ids.get('officials', official);
        rows.push(assignmentOf(game, seat, { ...association, associationId, officialId, now }));
      }
    }
    await insertAll(tx, Assignment, rows);
  },
};

function assignmentOf(
  game: Game,
  seat: SeatName,
  facts: {
    readonly associationId: string;
    readonly officialId: string;
    readonly arrivalLeadMinutes: number;
    readonly wrapUpMinutes: number;
    readonly now: Date;
  },
) {
  const { associationId, officialId, arrivalLeadMinutes, wrapUpMinutes, now } = facts;
  const starts = game.startsAt.getTime();
  const ends = starts + game.durationMinutes * minuteMs;
  return {
    associationId,
    id: randomUUID(),
    uid: randomUUID(),
    sequence: 0,
    publicationId: null,
    gameId: game.id,
    seat,
    officialId,
    venueId: game.venueId,
    startsAt: game.startsAt,
    endsAt: new Date(ends),
    dutyStartsAt: new Date(starts - arrivalLeadMinutes * minuteMs),
    dutyEndsAt: new Date(ends + wrapUpMinutes * minuteMs),
    reply: 'ACCEPTED' as const,
    repliedAt: null,
    replyReason: '',
    endReason: null,
    endedAt: null,
    createdAt: now,
    revisedAt: now,
  };
}

/** Past crews as a kind of list; register it with the `ImportsService`. */
export const crewsKind: StoredKind = { kind: crewsImport, store: crewsStore };
