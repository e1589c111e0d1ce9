import { randomUUID } from 'node:crypto';
import { Venue } from '../../../places/venue.entity';
import { Official } from '../../../roster/official.entity';
import { Conflict } from '../../conflict.entity';
import { Team } from '../../team.entity';
import type { ImportRecord } from '../import-record';
import { deletionsOf, insertAll, updatesOf, type ImportStore, type ObjectIds } from '../import-store';
import { conflictKey } from '../kinds/conflicts.import';

const kind = 'conflicts';

export const conflictsStore: ImportStore = {
  kind,
  load: async (tx, { associationId, ids }) => {
    const names = new Map([
      ...(await tx.findBy(Official, { associationId })).map(({ id, number }) => [id, number] as const),
      ...(await tx.findBy(Team, { associationId })).map(({ id, code }) => [id, code] as const),
      ...(await tx.findBy(Venue, { associationId })).map(({ id, code }) => [id, code] as const),
    ]);
    const nameOf = (id: string | null) => (id === null ? null : (names.get(id) ?? null));
    const conflicts = await tx.findBy(Conflict, { associationId });
    return new Map(
      conflicts.map((conflict) => {
        const { reason, since, until } = conflict;
        const record = {
          official: nameOf(conflict.officialId) ?? '',
          team: nameOf(conflict.teamId),
          venue: nameOf(conflict.venueId),
          otherOfficial: nameOf(conflict.otherOfficialId),
          reason,
          since,
          until,
        };
        const key = conflictKey(record);
        ids.put(kind, key, conflict.id);
        return [key, record];
      }),
    );
  },
  store: async (tx, plan, { associationId, ids }) => {
    await insertAll(
      tx,
      Conflict,
      plan.added.map(({ record }) => ({ associationId, id: randomUUID(), ...columnsOf(record, ids) })),
    );
    for (const { key, record } of updatesOf(plan))
      await tx.update(Conflict, { associationId, id: ids.get(kind, key) }, columnsOf(record, ids));
    for (const key of deletionsOf(plan)) await tx.delete(Conflict, { associationId, id: ids.get(kind, key) });
  },
};

function columnsOf(record: ImportRecord, ids: ObjectIds) {
  const idOf = (field: string, target: string) => {
    const name = record[field];
    return typeof name === 'string' ? ids.get(target, name) : null;
  };
  return {
    officialId: ids.get('officials', String(record['official'])),
    teamId: idOf('team', 'teams'),
    venueId: idOf('venue', 'venues'),
    otherOfficialId: idOf('otherOfficial', 'officials'),
    reason: String(record['reason']),
    since: typeof record['since'] === 'string' ? record['since'] : null,
    until: typeof record['until'] === 'string' ? record['until'] : null,
  };
}
