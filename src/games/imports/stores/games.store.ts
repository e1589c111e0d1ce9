import { randomUUID } from 'node:crypto';
import { resolveLocalTime } from '../../../platform/local-time';
import { zoneDataVersion } from '../../../platform/time-zones';
import { Court } from '../../../places/court.entity';
import { Venue } from '../../../places/venue.entity';
import { Division } from '../../division.entity';
import { Game } from '../../game.entity';
import { gameStart } from '../../game-start';
import { Team } from '../../team.entity';
import type { ImportRecord } from '../import-record';
import { insertAll, updatesOf, type ImportStore, type StoreContext } from '../import-store';
import { courtKey, courtKind } from './venues.store';

const kind = 'games';

export const gamesStore: ImportStore = {
  kind,
  load: async (tx, { associationId, ids }) => {
    const codes = new Map(
      [
        ...(await tx.findBy(Venue, { associationId })),
        ...(await tx.findBy(Division, { associationId })),
        ...(await tx.findBy(Team, { associationId })),
      ].map(({ id, code }) => [id, code] as const),
    );
    const courts = new Map((await tx.findBy(Court, { associationId })).map(({ id, name }) => [id, name]));
    const nameOf = (id: string) => codes.get(id) ?? '';
    const games = await tx.findBy(Game, { associationId });
    return new Map(
      games.map((game) => {
        ids.put(kind, game.number, game.id);
        const record = {
          number: game.number,
          division: nameOf(game.divisionId),
          venue: nameOf(game.venueId),
          court: game.courtId === null ? null : (courts.get(game.courtId) ?? null),
          date: game.localDate,
          time: game.localTime.slice(0, 5),
          utcOffset: chosenOffset(game),
          home: nameOf(game.homeTeamId),
          away: nameOf(game.awayTeamId),
          durationMinutes: game.durationMinutes,
          priority: game.priority,
          status: game.status,
          note: game.note,
          timeZone: game.timeZone,
        };
        return [game.number, record];
      }),
    );
  },
  store: async (tx, plan, context) => {
    const { associationId, ids, now } = context;
    const added = plan.added.map(({ key, record }) => ({ key, record, id: randomUUID() }));
    await insertAll(
      tx,
      Game,
      added.map(({ record, id }) => ({
        associationId,
        id,
        ...columnsOf(record, context),
        version: 1,
        updatedAt: now,
      })),
    );
    for (const { key, id } of added) ids.put(kind, key, id);
    for (const { key, record } of updatesOf(plan))
      await tx.update(
        Game,
        { associationId, id: ids.get(kind, key) },
        { ...columnsOf(record, context), version: () => 'version + 1', updatedAt: now },
      );
  },
};

function columnsOf(record: ImportRecord, { ids }: StoreContext) {
  const text = (field: string) => String(record[field]);
  const { utcOffset } = record;
  const local = { date: text('date'), time: text('time'), zone: text('timeZone') };
  return {
    number: text('number'),
    divisionId: ids.get('divisions', text('division')),
    venueId: ids.get('venues', text('venue')),
    courtId: record['court'] === null ? null : ids.get(courtKind, courtKey(text('venue'), text('court'))),
    localDate: local.date,
    localTime: local.time,
    timeZone: local.zone,
    zoneDataVersion,
    startsAt: gameStart({ ...local, utcOffset: typeof utcOffset === 'number' ? utcOffset : null }),
    durationMinutes: Number(record['durationMinutes']),
    homeTeamId: ids.get('teams', text('home')),
    awayTeamId: ids.get('teams', text('away')),
    priority: Number(record['priority']),
    status: text('status') as Game['status'],
    note: text('note'),
  };
}

/** Which of two readings of its local time a game has; null where there is one only. */
function chosenOffset({ localDate, localTime, timeZone, startsAt }: Game): number | null {
  const resolved = resolveLocalTime({ date: localDate, time: localTime.slice(0, 5), zone: timeZone });
  if (resolved.kind !== 'overlap') return null;
  const { earlier, later } = resolved;
  return startsAt.getTime() === later.instant.getTime() ? later.offsetMinutes : earlier.offsetMinutes;
}
