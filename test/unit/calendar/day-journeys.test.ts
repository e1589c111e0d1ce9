import { dayJourneys, leaveBy, type JourneyDuty } from '../../../src/slates/day-journeys';
import { measuredLegs } from '../../../src/places/travel-estimate';

// Goal: an official comes from home to the first duty of a local day, then from duty to duty, and what cannot be
// estimated says what is missing. Method: three places whose ways are measured, so that the figures are plain.
const model = { name: 'estimate', circuity: 1.4, speedKmh: 50, fixedMinutes: 3 };
const place = (id: string) => ({ id, latitude: 50, longitude: 0 });
const leg = (fromPlaceId: string, toPlaceId: string, minutes: number) => ({
  fromPlaceId,
  toPlaceId,
  minutes,
  metres: minutes * 1000,
  model: 'by hand',
});
const legs = measuredLegs([leg('home', 'a', 30), leg('a', 'b', 12), leg('home', 'b', 25)]);

function duty(id: string, venue: string, startsAt: string, change: Partial<JourneyDuty> = {}): JourneyDuty {
  return {
    assignmentId: id,
    venueId: venue,
    venueName: `Hall ${venue}`,
    place: place(venue),
    localDate: startsAt.slice(0, 10),
    startsAt: new Date(startsAt),
    dutyEndsAt: new Date(Date.parse(startsAt) + 120 * 60_000),
    ...change,
  };
}

const journeys = (duties: readonly JourneyDuty[], home: ReturnType<typeof place> | null = place('home')) =>
  Object.fromEntries(dayJourneys({ duties, home, model, legs }));

it('goes from home, stays in the building, changes the building, and starts at home again the next day', () => {
  const found = journeys([
    duty('4', 'b', '2026-11-29T10:00:00Z'),
    duty('2', 'a', '2026-11-28T12:00:00Z'),
    duty('3', 'b', '2026-11-28T18:00:00Z'),
    duty('1', 'a', '2026-11-28T10:00:00Z'),
  ]);
  expect(found['1']).toMatchObject({
    kind: 'from-home',
    travel: { minutes: 30, model: 'measured: by hand' },
  });
  expect(found['2']).toMatchObject({ kind: 'already-there', from: { assignmentId: '1' } });
  expect(found['3']).toMatchObject({
    kind: 'from-venue',
    from: { assignmentId: '2' },
    travel: { minutes: 12 },
  });
  expect(found['4']).toMatchObject({ kind: 'from-home', travel: { minutes: 25 } });
});

it('counts days where the venue is, not in Greenwich', () => {
  const found = journeys([
    duty('1', 'a', '2026-11-28T22:00:00Z', { localDate: '2026-11-28' }),
    duty('2', 'b', '2026-11-29T02:00:00Z', { localDate: '2026-11-28' }),
  ]);
  expect(found['2']).toMatchObject({ kind: 'from-venue' });
});

it('says what is missing', () => {
  expect(journeys([duty('1', 'a', '2026-11-28T10:00:00Z')], null)['1']).toEqual({
    kind: 'unknown',
    missing: 'home position',
  });
  const lost = journeys([
    duty('1', 'a', '2026-11-28T10:00:00Z', { place: null }),
    duty('2', 'b', '2026-11-28T15:00:00Z'),
  ]);
  expect(lost['1']).toEqual({ kind: 'unknown', missing: 'venue position' });
  expect(lost['2']).toEqual({ kind: 'unknown', missing: 'venue position' });
});

it('sets out early enough for travel, rounded up, and the margin', () => {
  const arriveAt = new Date('2026-11-28T17:45:00Z');
  expect(leaveBy(arriveAt, { minutes: 33 }, 10)).toEqual(new Date('2026-11-28T17:02:00Z'));
  expect(leaveBy(arriveAt, { minutes: 32.1 }, 10)).toEqual(new Date('2026-11-28T17:02:00Z'));
});
