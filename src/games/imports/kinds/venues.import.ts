import { isKnownZone, knownZoneNames } from '../../../platform/time-zones';
import { code, decimal, line, listOf, orNull, paragraphs, yesNo } from '../import-cells';
import { defineImportKind, optional, required, type RecordOf, type RowContext } from '../import-kind';
import { nearestName } from '../nearest-name';

const columns = {
  code: required(code(), 'short name by which other lists refer to the venue'),
  name: required(line(120), 'name of the building'),
  address: optional(line(200), '', 'street and number'),
  town: optional(line(80), '', 'town'),
  lat: optional(orNull(decimal(-90, 90)), null, 'latitude, degrees WGS 84'),
  lon: optional(orNull(decimal(-180, 180)), null, 'longitude, degrees WGS 84'),
  timeZone: optional(line(60), '', "IANA zone; empty takes the association's"),
  courts: optional(listOf(code()), [], 'its courts, with "|" between them'),
  entrance: optional(paragraphs(500), '', 'which door officials use'),
  changingRoom: optional(paragraphs(500), '', 'where officials change'),
  tableSide: optional(paragraphs(500), '', "on which side the scorer's table stands"),
  parking: optional(paragraphs(500), '', 'where to leave a car'),
  hazards: optional(paragraphs(500), '', 'what to watch out for'),
  emergencyAddress: optional(paragraphs(500), '', 'the address to say to an emergency service'),
  defibrillator: optional(paragraphs(500), '', 'where it hangs'),
  firstAid: optional(paragraphs(500), '', 'who or where'),
  nearestHospital: optional(paragraphs(500), '', 'name and way'),
  active: optional(yesNo(), true, 'whether games are played there'),
};

/** Buildings with their courts, and what a crew must know about them. */
export const venuesImport = defineImportKind({
  name: 'venues',
  noun: 'venue',
  after: [],
  columns,
  keyOf: (venue) => venue.code,
  complete: (merged, context, existing) => {
    const timeZone = merged.timeZone === '' ? context.association.timeZone : merged.timeZone;
    checkZone(timeZone, context);
    checkPosition(merged, context);
    const courts = [...merged.courts].sort();
    for (const court of existing?.courts ?? []) {
      if (!courts.includes(court) && isUsed(merged.code, court, context))
        context.fault(
          'courts',
          `Court "${court}" is missing, but games are played on it.`,
          'keep it in the list',
        );
    }
    if (existing !== undefined && existing.lat !== null && isElsewhere(existing, merged))
      noticeMeasuredLegs(merged.code, context);
    return { ...merged, timeZone, courts };
  },
  withdraw: (venue) => (venue.active ? { ...venue, active: false } : undefined),
});

/** A position is both figures or neither. */
export function checkPosition(
  place: { readonly lat: number | null; readonly lon: number | null },
  context: RowContext,
): void {
  if ((place.lat === null) === (place.lon === null)) return;
  const missing = place.lat === null ? 'lat' : 'lon';
  context.fault(missing, 'Only one of lat and lon is stated.', 'state both, or neither');
}

export function isElsewhere(
  before: { readonly lat: number | null; readonly lon: number | null },
  after: { readonly lat: number | null; readonly lon: number | null },
): boolean {
  return before.lat !== after.lat || before.lon !== after.lon;
}

/** Somebody measured ways to a place that now lies elsewhere. */
export function noticeMeasuredLegs(end: string, context: RowContext): void {
  const legs = [...context.state.all('travel-legs').values()];
  const count = legs.filter(({ from, to }) => from === end || to === end).length;
  if (count > 0)
    context.notice(
      'lat',
      `The position changes, and ${count} measured travel legs begin or end there.`,
      'measure them again',
    );
}

function checkZone(zone: string, context: RowContext): void {
  if (isKnownZone(zone)) return;
  const near = nearestName(zone, knownZoneNames());
  const remedy = near === null ? 'write an IANA name such as Europe/Berlin' : `did you mean "${near}"?`;
  context.fault('timeZone', `"${zone}" is no time zone.`, remedy);
}

function isUsed(venue: RecordOf<typeof columns>['code'], court: string, context: RowContext): boolean {
  return [...context.state.all('games').values()].some(
    (game) => game['venue'] === venue && game['court'] === court,
  );
}
