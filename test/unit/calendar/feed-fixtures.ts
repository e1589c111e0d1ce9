import type { FeedEntry, FeedInput } from '../../../src/calendar/feed-input';

/** An entry with everything as usual; tests state what matters to them. */
export function feedEntry(change: {
  readonly assignment?: Partial<FeedEntry['assignment']>;
  readonly game?: Partial<FeedEntry['game']>;
  readonly venue?: Partial<FeedEntry['venue']>;
  readonly partner?: FeedEntry['partner'];
  readonly journey?: FeedEntry['journey'];
}): FeedEntry {
  return {
    assignment: {
      uid: '6f1d3a52-8f0e-4b1d-9a53-0c3c5c1f2a01',
      sequence: 0,
      seat: 'chief',
      startsAt: new Date('2026-11-28T18:30:00Z'),
      endsAt: new Date('2026-11-28T20:15:00Z'),
      dutyStartsAt: new Date('2026-11-28T18:10:00Z'),
      reply: 'NEEDS-ACTION',
      endReason: null,
      createdAt: new Date('2026-11-19T20:00:00Z'),
      revisedAt: new Date('2026-11-19T20:00:00Z'),
      ...change.assignment,
    },
    game: {
      id: '2a7f8f3e-0a55-4f0e-8a5d-1f3c1d2e3f40',
      number: 'MC-1042',
      status: 'CONFIRMED',
      updatedAt: new Date('2026-11-10T09:00:00Z'),
      division: 'Under 14',
      home: 'Harbour Gulls',
      away: 'Dune Runners',
      ...change.game,
    },
    venue: {
      name: 'Saltmarsh Hall',
      address: '4 Reed Lane',
      town: 'Marram',
      timeZone: 'Europe/London',
      place: { id: 'p1', latitude: 52.9512345, longitude: 0.85 },
      court: 'Court 2',
      entrance: 'Side door on Reed Lane; ring twice',
      parking: '',
      changingRoom: 'Room B, key at the desk',
      ...change.venue,
    },
    partner: change.partner === undefined ? { givenName: 'Ada', isMinor: false } : change.partner,
    journey:
      change.journey === undefined
        ? {
            kind: 'from-home',
            travel: { minutes: 33, metres: 31_000, source: 'estimated', model: 'Marram Coast estimate' },
          }
        : change.journey,
  };
}

export function feedInput(entries: readonly FeedEntry[]): FeedInput {
  return {
    association: { name: 'Marram Coast', slug: 'marram-coast', language: 'en-GB' },
    publicUrl: 'https://crews.example.org',
    policy: { venueArrivalMinutes: 45, travelMarginMinutes: 10 },
    entries,
  };
}
