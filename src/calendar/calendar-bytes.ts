import ical, {
  ICalEventBusyStatus,
  ICalEventStatus,
  ICalEventTransparency,
  type ICalEventData,
} from 'ical-generator';
import type { CalendarDocument, CalendarEvent, CalendarPlace } from './calendar-document';
import { calendarName, plainText, singleLine, uriValue } from './calendar-text';

const uidForm = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;
const sequenceMax = 2 ** 31 - 1;

// RFC 5545 §3.6 wants at least one component; this one says nothing and shows nothing. An empty body would
// make Thunderbird wipe the calendar.
const emptyCalendarComponent = [
  'BEGIN:VTIMEZONE',
  'TZID:Etc/UTC',
  'BEGIN:STANDARD',
  'DTSTART:19700101T000000',
  'TZOFFSETFROM:+0000',
  'TZOFFSETTO:+0000',
  'TZNAME:UTC',
  'END:STANDARD',
  'END:VTIMEZONE',
  '',
].join('\r\n');

/**
 * The document as an RFC 5545 stream without METHOD, ORGANIZER and ATTENDEE: it is published, not sent to
 * anybody (§3.8.4.1). Equal documents give equal bytes, whenever and wherever they are rendered.
 *
 * Times are UTC with `Z`: a single game needs no recurrence, so neither a VTIMEZONE nor the zone data of the
 * reader can shift it, and the hour that happens twice stays unambiguous.
 *
 * @throws when an event ends before it starts, a UID is no lower-case UUID or is there twice, or a sequence is out of range
 */
export function renderCalendar(document: CalendarDocument): string {
  refuseImpossibleEvents(document.events);
  const calendar = ical({
    name: calendarName(document.name),
    prodId: { company: 'Crewloom', product: 'Calendar', language: 'EN' },
    ttl: document.refreshSeconds,
    events: document.events.map(eventData),
  });
  const text = calendar.toString();
  // The library leaves out the line end after the last line, which §3.1 asks for.
  return document.events.length === 0
    ? text.replace(/END:VCALENDAR$/, `${emptyCalendarComponent}END:VCALENDAR\r\n`)
    : `${text}\r\n`;
}

function eventData(event: CalendarEvent): ICalEventData {
  return {
    id: event.uid,
    sequence: event.sequence,
    // Dates, and no zone anywhere: the library then writes UTC. With a zone it would write process-local time.
    start: wholeSeconds(event.startsAt),
    end: wholeSeconds(event.endsAt),
    stamp: wholeSeconds(event.revisedAt),
    lastModified: wholeSeconds(event.revisedAt),
    created: wholeSeconds(event.createdAt),
    summary: singleLine(event.summary),
    description: plainText(event.description),
    location: locationData(event.place),
    status: ICalEventStatus[event.status],
    transparency: ICalEventTransparency[event.transparency],
    busystatus: ICalEventBusyStatus[event.busyStatus],
    ...(event.url === null ? {} : { url: uriValue(event.url) }),
  };
}

function locationData(place: CalendarPlace): NonNullable<ICalEventData['location']> {
  const address = singleLine(place.address);
  return {
    title: singleLine(place.name),
    ...(address === '' ? {} : { address }),
    ...(place.position === null
      ? {}
      : { geo: { lat: degrees(place.position.latitude), lon: degrees(place.position.longitude) } }),
  };
}

/** At most six decimals (RFC 5545 §3.8.1.6). The library drops a position with a zero in it; 0.11 m off is better than none. */
function degrees(value: number): number {
  const rounded = Math.round(value * 1e6) / 1e6;
  return rounded === 0 ? 1e-6 : rounded;
}

function wholeSeconds(instant: Date): Date {
  return new Date(Math.floor(instant.getTime() / 1000) * 1000);
}

/** The library swaps a reversed pair of times, repeats a UID and prints anything as a UID; none may reach it. */
function refuseImpossibleEvents(events: readonly CalendarEvent[]): void {
  const seen = new Set<string>();
  for (const { uid, sequence, startsAt, endsAt } of events) {
    if (!uidForm.test(uid)) throw new Error(`"${uid}" is no UUID in lower case, so no UID of ours.`);
    if (seen.has(uid)) throw new Error(`UID ${uid} is in the calendar twice.`);
    seen.add(uid);
    if (!(endsAt.getTime() > startsAt.getTime())) throw new Error(`Event ${uid} ends before it starts.`);
    if (!Number.isInteger(sequence) || sequence < 0 || sequence > sequenceMax) {
      throw new Error(`Event ${uid} has the sequence ${sequence}, outside 0 to ${sequenceMax}.`);
    }
  }
}
