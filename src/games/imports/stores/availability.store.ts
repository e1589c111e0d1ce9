import { randomUUID } from 'node:crypto';
import { AvailabilityRule } from '../../../roster/availability-rule.entity';
import { Official } from '../../../roster/official.entity';
import type { ImportRecord } from '../import-record';
import { deletionsOf, insertAll, updatesOf, type ImportStore } from '../import-store';
import { availabilityKey, stretchMinutes } from '../kinds/availability.import';

const kind = 'availability';
const dayMinutes = 1440;

export const availabilityStore: ImportStore = {
  kind,
  load: async (tx, { associationId, ids, association }) => {
    const numbers = new Map(
      (await tx.findBy(Official, { associationId })).map(({ id, number }) => [id, number]),
    );
    const rules = await tx.findBy(AvailabilityRule, { associationId });
    return new Map(
      rules.map((rule) => {
        const record = {
          official: numbers.get(rule.officialId) ?? '',
          kind: rule.kind,
          date: rule.localDate,
          from: rule.localTime.slice(0, 5),
          to: endOf(rule),
          repeat: rule.recurrence ?? '',
          until: null,
          except: [...rule.exceptDates].sort(),
          priority: rule.priority,
          note: rule.note,
        };
        // Files speak in the association's zone; what stands in another one is nothing that a file can mean.
        const elsewhere = rule.timeZone === association.timeZone ? '' : ` ${rule.timeZone}`;
        const key = `${availabilityKey(record)}${elsewhere}`;
        ids.put(kind, key, rule.id);
        return [key, record];
      }),
    );
  },
  store: async (tx, plan, { associationId, association, ids }) => {
    await insertAll(
      tx,
      AvailabilityRule,
      plan.added.map(({ record }) => ({
        associationId,
        id: randomUUID(),
        officialId: ids.get('officials', String(record['official'])),
        kind: String(record['kind']) as AvailabilityRule['kind'],
        localDate: String(record['date']),
        localTime: String(record['from']),
        durationMinutes: stretchMinutes(String(record['from']), String(record['to'])),
        timeZone: association.timeZone,
        recurrence: record['repeat'] === '' ? null : String(record['repeat']),
        ...changeableOf(record),
        source: 'import' as const,
        version: 1,
      })),
    );
    for (const { key, record } of updatesOf(plan))
      await tx.update(
        AvailabilityRule,
        { associationId, id: ids.get(kind, key) },
        { ...changeableOf(record), version: () => 'version + 1' },
      );
    for (const key of deletionsOf(plan))
      await tx.delete(AvailabilityRule, { associationId, id: ids.get(kind, key) });
  },
};

function changeableOf(record: ImportRecord) {
  return {
    exceptDates: Array.isArray(record['except']) ? record['except'].map(String) : [],
    priority: Number(record['priority']),
    note: String(record['note']),
  };
}

/** `HH:mm`, 24:00 for midnight; a stretch of more than a day, which no file can state, has its days added. */
function endOf({ localTime, durationMinutes }: AvailabilityRule): string {
  const start = Number(localTime.slice(0, 2)) * 60 + Number(localTime.slice(3, 5));
  const end = (start + durationMinutes) % dayMinutes || dayMinutes;
  const two = (number: number) => String(number).padStart(2, '0');
  const time = `${two(Math.floor(end / 60))}:${two(end % 60)}`;
  return durationMinutes <= dayMinutes ? time : `${time} after ${durationMinutes} minutes`;
}
