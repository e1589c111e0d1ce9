import { randomUUID } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import { Court } from '../../../places/court.entity';
import { Place } from '../../../places/place.entity';
import { Venue } from '../../../places/venue.entity';
import type { ImportRecord } from '../import-record';
import { insertAll, updatesOf, type ImportStore, type StoreContext } from '../import-store';
import { moveTo, placeAll, placeKey, placeKind } from './placing';

const kind = 'venues';
/** Kind under which the ids of courts are noted. */
export const courtKind = 'courts';

export function courtKey(venue: string, court: string): string {
  return `${venue}|${court}`;
}

export const venuesStore: ImportStore = {
  kind,
  load: async (tx, { associationId, ids }) => {
    const venues = await tx.findBy(Venue, { associationId });
    const places = new Map((await tx.findBy(Place, { associationId })).map((place) => [place.id, place]));
    const courts = await tx.findBy(Court, { associationId });
    return new Map(
      venues.map((venue) => {
        const { code } = venue;
        ids.put(kind, code, venue.id);
        const place = venue.placeId === null ? undefined : places.get(venue.placeId);
        if (place !== undefined) ids.put(placeKind, placeKey(kind, code), place.id);
        const own = courts.filter(({ venueId }) => venueId === venue.id);
        for (const court of own) ids.put(courtKind, courtKey(code, court.name), court.id);
        return [code, recordOf(venue, place, own)];
      }),
    );
  },
  store: async (tx, plan, context) => {
    const { associationId, ids } = context;
    const placeIds = await placeAll(tx, kind, plan.added, context);
    const added = plan.added.map(({ key, record }) => ({ key, record, id: randomUUID() }));
    await insertAll(
      tx,
      Venue,
      added.map(({ key, record, id }) => ({
        associationId,
        id,
        ...columnsOf(record),
        placeId: placeIds.get(key) ?? null,
        version: 1,
      })),
    );
    for (const { key, id } of added) ids.put(kind, key, id);
    for (const { key, record } of added) await storeCourts(tx, key, [], record, context);
    for (const { key, before, record } of updatesOf(plan)) {
      const placeId = await moveTo(tx, kind, { key, record }, context);
      await tx.update(
        Venue,
        { associationId, id: ids.get(kind, key) },
        { ...columnsOf(record), placeId, version: () => 'version + 1' },
      );
      await storeCourts(tx, key, namesOf(before), record, context);
    }
  },
};

async function storeCourts(
  tx: EntityManager,
  venue: string,
  before: readonly string[],
  record: ImportRecord,
  { associationId, ids }: StoreContext,
): Promise<void> {
  const names = namesOf(record);
  const fresh = names.filter((name) => !before.includes(name)).map((name) => ({ name, id: randomUUID() }));
  const venueId = ids.get(kind, venue);
  await insertAll(
    tx,
    Court,
    fresh.map((court) => ({ associationId, venueId, ...court })),
  );
  for (const { name, id } of fresh) ids.put(courtKind, courtKey(venue, name), id);
  for (const name of before.filter((old) => !names.includes(old)))
    await tx.delete(Court, { associationId, id: ids.get(courtKind, courtKey(venue, name)) });
}

function namesOf(record: ImportRecord): string[] {
  const { courts } = record;
  return Array.isArray(courts) ? courts.map(String) : [];
}

function recordOf(venue: Venue, place: Place | undefined, courts: readonly Court[]): ImportRecord {
  return {
    code: venue.code,
    name: venue.name,
    address: venue.address,
    town: venue.town,
    lat: place?.latitude ?? null,
    lon: place?.longitude ?? null,
    timeZone: venue.timeZone,
    courts: courts.map(({ name }) => name).sort(),
    entrance: venue.entrance,
    changingRoom: venue.changingRoom,
    tableSide: venue.tableSide,
    parking: venue.parking,
    hazards: venue.hazards,
    emergencyAddress: venue.emergencyAddress,
    defibrillator: venue.defibrillator,
    firstAid: venue.firstAid,
    nearestHospital: venue.nearestHospital,
    active: venue.active,
  };
}

function columnsOf(record: ImportRecord) {
  const text = (field: string) => String(record[field]);
  return {
    code: text('code'),
    name: text('name'),
    address: text('address'),
    town: text('town'),
    timeZone: text('timeZone'),
    entrance: text('entrance'),
    changingRoom: text('changingRoom'),
    tableSide: text('tableSide'),
    parking: text('parking'),
    hazards: text('hazards'),
    emergencyAddress: text('emergencyAddress'),
    defibrillator: text('defibrillator'),
    firstAid: text('firstAid'),
    nearestHospital: text('nearestHospital'),
    active: record['active'] === true,
  };
}
