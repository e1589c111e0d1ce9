import { LevelStep } from '../../../access/level-step.entity';
import { insertAll, updatesOf, type ImportStore } from '../import-store';

export const levelsStore: ImportStore = {
  kind: 'levels',
  load: async (tx, { associationId }) => {
    const steps = await tx.findBy(LevelStep, { associationId });
    return new Map(steps.map(({ level, name }) => [String(level), { level, name }]));
  },
  store: async (tx, plan, { associationId }) => {
    await insertAll(
      tx,
      LevelStep,
      plan.added.map(({ record }) => ({
        associationId,
        level: Number(record['level']),
        name: String(record['name']),
      })),
    );
    for (const { record } of updatesOf(plan))
      await tx.update(LevelStep, { associationId, level: record['level'] }, { name: String(record['name']) });
  },
};
