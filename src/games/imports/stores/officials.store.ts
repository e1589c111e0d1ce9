import { randomUUID } from 'node:crypto';
import { Place } from '../../../places/place.entity';
import { Official } from '../../../roster/official.entity';
import type { ImportRecord } from '../import-record';
import { insertAll, updatesOf, type ImportStore } from '../import-store';
import { moveTo, placeAll, placeKey, placeKind } from './placing';

const kind = 'officials';

export const officialsStore: ImportStore = {
  kind,
  load: async (tx, { associationId, ids }) => {
    const officials = await tx.findBy(Official, { associationId });
    const places = new Map((await tx.findBy(Place, { associationId })).map((place) => [place.id, place]));
    return new Map(
      officials.map((official) => {
        const { number, homePlaceId } = official;
        ids.put(kind, number, official.id);
        const home = homePlaceId === null ? undefined : places.get(homePlaceId);
        if (home !== undefined) ids.put(placeKind, placeKey(kind, number), home.id);
        return [number, recordOf(official, home)];
      }),
    );
  },
  store: async (tx, plan, context) => {
    const { associationId, ids } = context;
    const placeIds = await placeAll(tx, kind, plan.added, context);
    const added = plan.added.map(({ key, record }) => ({ key, record, id: randomUUID() }));
    await insertAll(
      tx,
      Official,
      added.map(({ key, record, id }) => ({
        associationId,
        id,
        ...columnsOf(record),
        homePlaceId: placeIds.get(key) ?? null,
        version: 1,
      })),
    );
    for (const { key, id } of added) ids.put(kind, key, id);
    for (const { key, record } of updatesOf(plan)) {
      const homePlaceId = await moveTo(tx, kind, { key, record }, context);
      await tx.update(
        Official,
        { associationId, id: ids.get(kind, key) },
        { ...columnsOf(record), homePlaceId, version: () => 'version + 1' },
      );
    }
  },
};

function recordOf(official: Official, home: Place | undefined): ImportRecord {
  return {
    number: official.number,
    givenName: official.givenName,
    familyName: official.familyName,
    level: official.level,
    mayBeChief: official.mayBeChief,
    birthDate: official.birthDate,
    guardianName: official.guardianName,
    guardianContact: official.guardianContact,
    homeAddress: official.homeAddress,
    lat: home?.latitude ?? null,
    lon: home?.longitude ?? null,
    maxHomeMinutes: official.maxHomeMinutes,
    maxGamesPerDay: official.maxGamesPerDay,
    maxGamesPerSlate: official.maxGamesPerSlate,
    wishedGamesPerSlate: official.wishedGamesPerSlate,
    email: official.email,
    phone: official.phone,
    sharePhoneWithCrew: official.sharePhoneWithCrew,
    languages: official.languages,
    certificateExpiresOn: official.certificateExpiresOn,
    active: official.active,
  };
}

function columnsOf(record: ImportRecord) {
  const text = (field: string) => String(record[field]);
  const textOrNull = (field: string) => (record[field] === null ? null : text(field));
  const { wishedGamesPerSlate, languages } = record;
  return {
    number: text('number'),
    givenName: text('givenName'),
    familyName: text('familyName'),
    level: Number(record['level']),
    mayBeChief: record['mayBeChief'] === true,
    birthDate: textOrNull('birthDate'),
    guardianName: text('guardianName'),
    guardianContact: text('guardianContact'),
    homeAddress: text('homeAddress'),
    maxHomeMinutes: Number(record['maxHomeMinutes']),
    maxGamesPerDay: Number(record['maxGamesPerDay']),
    maxGamesPerSlate: Number(record['maxGamesPerSlate']),
    wishedGamesPerSlate: typeof wishedGamesPerSlate === 'number' ? wishedGamesPerSlate : null,
    email: textOrNull('email'),
    phone: text('phone'),
    sharePhoneWithCrew: record['sharePhoneWithCrew'] === true,
    languages: Array.isArray(languages) ? languages.map(String) : [],
    certificateExpiresOn: textOrNull('certificateExpiresOn'),
    active: record['active'] === true,
  };
}
