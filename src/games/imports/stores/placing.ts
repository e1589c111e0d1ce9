import { randomUUID } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import { Place } from '../../../places/place.entity';
import type { ImportRecord } from '../import-record';
import { insertAll, type StoreContext } from '../import-store';

/** Kind under which the ids of places are noted, by their owner's kind and key. */
export const placeKind = 'places';

export function placeKey(kind: string, key: string): string {
  return `${kind} ${key}`;
}

interface Owner {
  readonly key: string;
  readonly record: ImportRecord;
}

/** Gives new owners their places; the id is null where no position is stated. */
export async function placeAll(
  tx: EntityManager,
  kind: string,
  owners: readonly Owner[],
  { associationId, ids }: StoreContext,
): Promise<Map<string, string | null>> {
  const placed = owners.map((owner) => ({ ...owner, position: positionOf(owner.record), id: randomUUID() }));
  await insertAll(
    tx,
    Place,
    placed.flatMap(({ id, position }) => (position === null ? [] : [{ associationId, id, ...position }])),
  );
  for (const { key, id, position } of placed)
    if (position !== null) ids.put(placeKind, placeKey(kind, key), id);
  return new Map(placed.map(({ key, id, position }) => [key, position === null ? null : id]));
}

/** Moves an owner's place, makes one, or keeps it as it is; a place that nobody has any more is left behind unused. */
export async function moveTo(
  tx: EntityManager,
  kind: string,
  owner: Owner,
  context: StoreContext,
): Promise<string | null> {
  const { associationId, ids } = context;
  const id = ids.find(placeKind, placeKey(kind, owner.key));
  const position = positionOf(owner.record);
  if (position === null) return null;
  if (id === null) return (await placeAll(tx, kind, [owner], context)).get(owner.key) ?? null;
  await tx.update(Place, { associationId, id }, position);
  return id;
}

function positionOf(record: ImportRecord): { latitude: number; longitude: number } | null {
  const { lat, lon } = record;
  return typeof lat === 'number' && typeof lon === 'number' ? { latitude: lat, longitude: lon } : null;
}
