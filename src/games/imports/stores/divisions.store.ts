import { randomUUID } from 'node:crypto';
import { Division } from '../../division.entity';
import { playingRulesSchema } from '../../playing-rules';
import type { ImportRecord } from '../import-record';
import { insertAll, updatesOf, type ImportStore } from '../import-store';
import { playingRuleColumns } from '../kinds/divisions.import';

const kind = 'divisions';

export const divisionsStore: ImportStore = {
  kind,
  load: async (tx, { associationId, ids }) => {
    const divisions = await tx.findBy(Division, { associationId });
    for (const { code, id } of divisions) ids.put(kind, code, id);
    return new Map(divisions.map((division) => [division.code, recordOf(division)]));
  },
  store: async (tx, plan, { associationId, ids }) => {
    const added = plan.added.map(({ key, record }) => ({ key, record, id: randomUUID() }));
    await insertAll(
      tx,
      Division,
      added.map(({ record, id }) => ({ associationId, id, ...columnsOf(record), version: 1 })),
    );
    for (const { key, id } of added) ids.put(kind, key, id);
    for (const { key, record } of updatesOf(plan))
      await tx.update(
        Division,
        { associationId, id: ids.get(kind, key) },
        { ...columnsOf(record), version: () => 'version + 1' },
      );
  },
};

function recordOf(division: Division): ImportRecord {
  const { note, ...rules } = division.playingRules;
  return {
    code: division.code,
    name: division.name,
    chiefMinLevel: division.chiefMinLevel,
    umpireMinLevel: division.umpireMinLevel,
    chiefTargetLevel: division.chiefTargetLevel,
    umpireTargetLevel: division.umpireTargetLevel,
    pairingCost: division.pairingCost,
    gameMinutes: division.gameMinutes,
    priority: division.priority,
    chiefFee: division.feeChiefMinorUnits,
    umpireFee: division.feeUmpireMinorUnits,
    ...rules,
    rulesNote: note,
  };
}

function columnsOf(record: ImportRecord) {
  const rules = Object.fromEntries(
    Object.keys(playingRuleColumns).map((field) => [field === 'rulesNote' ? 'note' : field, record[field]]),
  );
  const { pairingCost } = record;
  return {
    code: String(record['code']),
    name: String(record['name']),
    chiefMinLevel: Number(record['chiefMinLevel']),
    umpireMinLevel: Number(record['umpireMinLevel']),
    chiefTargetLevel: Number(record['chiefTargetLevel']),
    umpireTargetLevel: Number(record['umpireTargetLevel']),
    pairingCost: Array.isArray(pairingCost) ? pairingCost.map(Number) : [],
    gameMinutes: Number(record['gameMinutes']),
    priority: Number(record['priority']),
    playingRules: playingRulesSchema.parse(rules),
    feeChiefMinorUnits: Number(record['chiefFee']),
    feeUmpireMinorUnits: Number(record['umpireFee']),
  };
}
