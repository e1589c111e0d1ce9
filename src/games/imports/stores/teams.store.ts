import { randomUUID } from 'node:crypto';
import { Division } from '../../division.entity';
import { Team } from '../../team.entity';
import type { ImportRecord } from '../import-record';
import { insertAll, updatesOf, type ImportStore, type ObjectIds } from '../import-store';

const kind = 'teams';

export const teamsStore: ImportStore = {
  kind,
  load: async (tx, { associationId, ids }) => {
    const divisions = new Map(
      (await tx.findBy(Division, { associationId })).map(({ id, code }) => [id, code]),
    );
    const teams = await tx.findBy(Team, { associationId });
    return new Map(
      teams.map(({ id, code, name, divisionId, homeColour, awayColour, active }) => {
        ids.put(kind, code, id);
        const division = divisionId === null ? null : (divisions.get(divisionId) ?? null);
        return [code, { code, name, division, homeColour, awayColour, active }];
      }),
    );
  },
  store: async (tx, plan, { associationId, ids }) => {
    const added = plan.added.map(({ key, record }) => ({ key, record, id: randomUUID() }));
    await insertAll(
      tx,
      Team,
      added.map(({ record, id }) => ({ associationId, id, ...columnsOf(record, ids), version: 1 })),
    );
    for (const { key, id } of added) ids.put(kind, key, id);
    for (const { key, record } of updatesOf(plan))
      await tx.update(
        Team,
        { associationId, id: ids.get(kind, key) },
        { ...columnsOf(record, ids), version: () => 'version + 1' },
      );
  },
};

function columnsOf(record: ImportRecord, ids: ObjectIds) {
  const { division } = record;
  return {
    code: String(record['code']),
    name: String(record['name']),
    divisionId: typeof division === 'string' ? ids.get('divisions', division) : null,
    homeColour: String(record['homeColour']),
    awayColour: String(record['awayColour']),
    active: record['active'] === true,
  };
}
