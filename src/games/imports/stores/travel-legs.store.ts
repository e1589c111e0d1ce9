import { Not, IsNull } from 'typeorm';
import { TravelLeg } from '../../../places/travel-leg.entity';
import { Venue } from '../../../places/venue.entity';
import { Official } from '../../../roster/official.entity';
import type { ImportRecord } from '../import-record';
import { deletionsOf, insertAll, updatesOf, type ImportStore, type ObjectIds } from '../import-store';
import { homeEnd, legEnd } from '../kinds/travel-legs.import';
import { placeKey, placeKind } from './placing';

const source = 'measured';

export const travelLegsStore: ImportStore = {
  kind: 'travel-legs',
  load: async (tx, { associationId }) => {
    const legs = await tx.findBy(TravelLeg, { associationId, source });
    if (legs.length === 0) return new Map();
    const venues = await tx.findBy(Venue, { associationId, placeId: Not(IsNull()) });
    const officials = await tx.findBy(Official, { associationId, homePlaceId: Not(IsNull()) });
    const ends = new Map([
      ...venues.map(({ placeId, code }) => [placeId, code] as const),
      ...officials.map(({ homePlaceId, number }) => [homePlaceId, homeEnd(number)] as const),
    ]);
    return new Map(
      legs.flatMap((leg): [string, ImportRecord][] => {
        const [from, to] = [ends.get(leg.fromPlaceId), ends.get(leg.toPlaceId)];
        if (from === undefined || to === undefined) return [];
        const { minutes, metres, model } = leg;
        return [[`${from} > ${to}`, { from, to, minutes, metres, measuredBy: model }]];
      }),
    );
  },
  store: async (tx, plan, { associationId, ids, now }) => {
    const figuresOf = (record: ImportRecord) => ({
      minutes: Number(record['minutes']),
      metres: Number(record['metres']),
      model: String(record['measuredBy']),
      notedAt: now,
    });
    await insertAll(
      tx,
      TravelLeg,
      plan.added.map(({ record }) => ({
        associationId,
        source,
        ...endsOf(record, ids),
        ...figuresOf(record),
      })),
    );
    for (const { record } of updatesOf(plan))
      await tx.update(TravelLeg, { associationId, source, ...endsOf(record, ids) }, figuresOf(record));
    for (const key of deletionsOf(plan)) {
      const [from, to] = key.split(' > ');
      await tx.delete(TravelLeg, {
        associationId,
        source,
        ...endsOf({ from: from ?? '', to: to ?? '' }, ids),
      });
    }
  },
};

function endsOf(leg: ImportRecord, ids: ObjectIds): { fromPlaceId: string; toPlaceId: string } {
  const placeOf = (text: unknown) => {
    const { kind, key } = legEnd(String(text));
    return ids.get(placeKind, placeKey(kind, key));
  };
  return { fromPlaceId: placeOf(leg['from']), toPlaceId: placeOf(leg['to']) };
}
