import ICAL from 'ical.js';
import { renderCalendar } from '../../../src/calendar/calendar-bytes';
import { personalFeed } from '../../../src/calendar/personal-feed';
import { feedEntry, feedInput } from '../../unit/calendar/feed-fixtures';
import { byteFaults, contentLines } from '../../unit/calendar/ical-lines';

// Goal: the feed follows RFC 5545 (and 7986, 5546 where they say more) rule by rule, each test naming its
// section. Method: the stream is read by a reader of our own that knows only §3.1, and by ical.js.
const uidOf = (number: number) => `6f1d3a52-8f0e-4b1d-9a53-0c3c5c1f2a${String(number).padStart(2, '0')}`;
const entries = [
  feedEntry({ assignment: { uid: uidOf(1), sequence: 3 } }),
  feedEntry({
    assignment: { uid: uidOf(2), reply: 'ACCEPTED' },
    venue: { name: 'Sporthalle „Große Düne“, Süd; Tor 2', entrance: 'x'.repeat(300) },
  }),
  feedEntry({ assignment: { uid: uidOf(3), endReason: 'replaced', sequence: 1 }, journey: null }),
];
const document = personalFeed(feedInput(entries));
const stream = renderCalendar(document);
const lines = contentLines(stream);
const values = (name: string) => lines.filter((line) => line.name === name).map((line) => line.value);
const vevents = () => new ICAL.Component(ICAL.parse(stream) as unknown[]).getAllSubcomponents('vevent');

describe('the stream', () => {
  it('§3.1: ends every line in CRLF, folds at 75 octets without cutting a character', () => {
    expect(byteFaults(stream)).toEqual([]);
    expect(byteFaults(stream.replaceAll('\r\n', '\n'))).not.toEqual([]);
    expect(Math.max(...stream.split('\r\n').map((line) => Buffer.byteLength(line)))).toBeGreaterThan(70);
  });

  it('§3.4: is one VCALENDAR object', () => {
    expect(lines[0]).toMatchObject({ name: 'BEGIN', value: 'VCALENDAR' });
    expect(lines.at(-1)).toMatchObject({ name: 'END', value: 'VCALENDAR' });
    expect(values('BEGIN').filter((value) => value === 'VCALENDAR')).toHaveLength(1);
  });

  it('§3.6: states PRODID and VERSION once each, and has a component even without games', () => {
    expect(values('PRODID')).toEqual(['-//Crewloom//Calendar//EN']);
    expect(values('VERSION')).toEqual(['2.0']);
    const empty = renderCalendar(personalFeed(feedInput([])));
    expect(byteFaults(empty)).toEqual([]);
    const parsed = new ICAL.Component(ICAL.parse(empty) as unknown[]);
    expect(parsed.getAllSubcomponents('vtimezone')).toHaveLength(1);
    expect(parsed.getAllSubcomponents('vevent')).toHaveLength(0);
  });

  it('§3.6.1: every event has UID and DTSTAMP once, and none of DURATION, RRULE, RECURRENCE-ID', () => {
    for (const event of vevents()) {
      for (const name of ['uid', 'dtstamp', 'dtstart', 'dtend', 'sequence', 'status', 'transp', 'summary']) {
        expect(event.getAllProperties(name)).toHaveLength(1);
      }
      for (const name of ['duration', 'rrule', 'rdate', 'recurrence-id']) {
        expect(event.getAllProperties(name)).toHaveLength(0);
      }
    }
  });

  it('§3.7.2, §3.8.4.1, §3.8.4.3: is published: no METHOD, no ATTENDEE, no ORGANIZER, and no VALARM', () => {
    for (const name of ['METHOD', 'ATTENDEE', 'ORGANIZER']) expect(values(name)).toEqual([]);
    expect(values('BEGIN')).not.toContain('VALARM');
  });

  it('RFC 7986 §5.1, §5.7, §5.8: names the calendar, suggests an interval, never repeats its secret address', () => {
    expect(values('NAME')).toEqual(['Marram Coast: my games']);
    expect(lines.find((line) => line.name === 'REFRESH-INTERVAL')).toMatchObject({
      parameters: ';VALUE=DURATION',
      value: 'PT1H',
    });
    expect(values('X-PUBLISHED-TTL')).toEqual(['PT1H']);
    expect(values('SOURCE')).toEqual([]);
  });
});

describe('each event', () => {
  it('§3.3.5, §3.8.2.4, §3.8.2.2: starts and ends in UTC, the end after the start', () => {
    for (const name of ['DTSTART', 'DTEND', 'DTSTAMP', 'CREATED', 'LAST-MODIFIED']) {
      expect(values(name)).toHaveLength(3);
      for (const value of values(name)) expect(value).toMatch(/^\d{8}T\d{6}Z$/);
    }
    values('DTSTART').forEach((start, index) => expect((values('DTEND')[index] ?? '') > start).toBe(true));
  });

  it('§3.8.7.2, §3.8.7.3: without METHOD, DTSTAMP is the revision, equal to LAST-MODIFIED', () => {
    expect(values('DTSTAMP')).toEqual(values('LAST-MODIFIED'));
    expect(renderCalendar(personalFeed(feedInput(entries)))).toBe(stream);
  });

  it('§3.8.4.7, §3.8.7.4: keeps the stored UID and SEQUENCE', () => {
    expect(values('UID')).toEqual([uidOf(1), uidOf(2), uidOf(3)]);
    expect(values('SEQUENCE')).toEqual(['3', '0', '1']);
  });

  it('§3.8.1.11, §3.8.2.7: STATUS and TRANSP by the standing', () => {
    expect(values('STATUS')).toEqual(['TENTATIVE', 'CONFIRMED', 'CANCELLED']);
    expect(values('TRANSP')).toEqual(['OPAQUE', 'OPAQUE', 'TRANSPARENT']);
    expect(values('X-MICROSOFT-CDO-BUSYSTATUS')).toEqual(['TENTATIVE', 'BUSY', 'FREE']);
  });

  it('§3.3.11: escapes backslash, semicolon, comma and line end in TEXT', () => {
    const location = values('LOCATION')[1] ?? '';
    expect(location).toBe('Sporthalle „Große Düne“\\, Süd\\; Tor 2\\, Court 2\\n4 Reed Lane\\, Marram');
    expect(new ICAL.Event(vevents()[1]).location).toBe(
      'Sporthalle „Große Düne“, Süd; Tor 2, Court 2\n4 Reed Lane, Marram',
    );
  });

  it('§3.3.13, §3.8.4.6: URL is a URI and takes no backslash', () => {
    const [event] = document.events;
    if (event === undefined) throw new Error('no event');
    const url = 'https://crews.example.org/a?at=52.5,13.4;b=\\';
    const text = renderCalendar({ ...document, events: [{ ...event, url }] });
    const [line] = contentLines(text).filter(({ name }) => name === 'URL');
    expect(line?.value).toBe('https://crews.example.org/a?at=52.5%2C13.4%3Bb=%5C');
    expect(() =>
      renderCalendar({ ...document, events: [{ ...event, url: 'javascript:alert(1)' }] }),
    ).toThrow();
  });

  it('§3.8.1.6: GEO is latitude;longitude with at most six decimals, also on the equator', () => {
    expect(values('GEO')[0]).toBe('52.951235;0.85');
    const [event] = document.events;
    if (event === undefined) throw new Error('no event');
    const place = { ...event.place, position: { latitude: 0, longitude: 36.8 } };
    const text = renderCalendar({ ...document, events: [{ ...event, place }] });
    expect(contentLines(text).find(({ name }) => name === 'GEO')?.value).toMatch(/^0\.00000\d;36\.8$/);
  });

  it('comes back from ical.js with the same UIDs, instants, STATUS and SEQUENCE', () => {
    const read = vevents().map((vevent) => {
      const event = new ICAL.Event(vevent);
      return {
        uid: event.uid,
        startsAt: event.startDate.toJSDate(),
        endsAt: event.endDate.toJSDate(),
        status: vevent.getFirstPropertyValue('status'),
        sequence: event.sequence,
      };
    });
    expect(read).toEqual(
      document.events.map(({ uid, startsAt, endsAt, status, sequence }) => ({
        uid,
        startsAt,
        endsAt,
        status,
        sequence,
      })),
    );
  });
});

describe('what the renderer refuses', () => {
  const [event] = document.events;
  if (event === undefined) throw new Error('no event');
  it.each([
    ['a reversed pair of times', { startsAt: event.endsAt, endsAt: event.startsAt }],
    ['an event without length', { endsAt: event.startsAt }],
    ['a UID that would inject a line', { uid: 'x\r\nATTENDEE:mailto:evil@example.org' }],
    ['a sequence above 2^31 − 1', { sequence: 2 ** 31 }],
    ['a falling-apart sequence', { sequence: 0.5 }],
  ])('%s', (_, change) => {
    expect(() => renderCalendar({ ...document, events: [{ ...event, ...change }] })).toThrow();
  });

  it('the same UID twice', () => {
    expect(() => renderCalendar({ ...document, events: [event, event] })).toThrow(/twice/);
  });
});
