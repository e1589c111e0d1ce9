import { localParts } from '../platform/local-time';
import { leaveBy, type Journey } from '../slates/day-journeys';
import { calendarDay } from '../web/format/instants';
import { standingWords, type Standing } from './event-state';
import type { FeedEntry, FeedInput } from './feed-input';

const seatWords = { chief: 'crew chief', umpire: 'umpire' } as const;

/** "TENTATIVE – Crew chief: Gulls v Dunes (U14)" */
export function eventSummary({ assignment, game }: FeedEntry, standing: Standing): string {
  const role = assignment.seat === 'chief' ? 'Crew chief' : 'Umpire';
  return `${standingWords[standing]}${role}: ${game.home} v ${game.away} (${game.division})`;
}

/** What the official needs on the day, line by line; nothing of anybody else but the partner's first name. */
export function eventDescription(entry: FeedEntry, standing: Standing, input: FeedInput): string {
  const { assignment, game, venue } = entry;
  const tipOff = localParts(assignment.startsAt, venue.timeZone);
  const day = calendarDay(tipOff.date, input.association.language);
  const isHeld = standing === 'asked' || standing === 'accepted' || standing === 'date open';
  return [
    standingLine(standing),
    `Tip-off ${tipOff.time}, ${day} ${tipOff.date.slice(0, 4)} (${venue.timeZone}, ${tipOff.abbreviation})`,
    ...(isHeld ? dayLines(entry, input) : []),
    `Your role: ${seatWords[assignment.seat]}`,
    ...(isHeld ? [partnerLine(entry)] : []),
    `Game ${game.number}, ${game.division}`,
    ...(isHeld ? venueLines(venue) : []),
    ...(isHeld ? ['', `Briefing: ${briefingAddress(entry, input)}`] : []),
  ].join('\n');
}

export function briefingAddress({ game }: FeedEntry, { association, publicUrl }: FeedInput): string {
  return `${publicUrl}/${association.slug}/games/${game.id}/briefing`;
}

function standingLine(standing: Standing): string {
  switch (standing) {
    case 'asked':
      return 'Please reply: you have not accepted this game yet.';
    case 'accepted':
      return 'You have accepted this game.';
    case 'date open':
      return 'Keep the time free: date and time of this game are not settled.';
    case 'declined':
      return 'You declined this game.';
    case 'no longer assigned':
      return 'You are no longer assigned to this game.';
    case 'game cancelled':
      return 'This game is cancelled.';
  }
}

function dayLines(entry: FeedEntry, input: FeedInput): string[] {
  const { assignment, venue, journey } = entry;
  const at = (instant: Date) => localParts(instant, venue.timeZone).time;
  const before = Math.round((assignment.startsAt.getTime() - assignment.dutyStartsAt.getTime()) / 60_000);
  const onCourt = `On court ${at(assignment.dutyStartsAt)}, ${before} minutes before tip-off`;
  return journey === null ? [onCourt] : [onCourt, journeyLine(journey, entry, input)];
}

function journeyLine(journey: Journey, { assignment, venue }: FeedEntry, { policy }: FeedInput): string {
  const at = (instant: Date) => localParts(instant, venue.timeZone).time;
  switch (journey.kind) {
    case 'from-home': {
      const arriveAt = new Date(assignment.startsAt.getTime() - policy.venueArrivalMinutes * 60_000);
      const leaveAt = leaveBy(arriveAt, journey.travel, policy.travelMarginMinutes);
      const { minutes, model } = journey.travel;
      return `Leave home by ${at(leaveAt)}: ${minutes} min (${model}) and ${policy.travelMarginMinutes} min margin, at the venue ${at(arriveAt)}`;
    }
    case 'from-venue':
      return `From ${journey.from.venueName}: free to leave ${at(journey.from.dutyEndsAt)}, about ${journey.travel.minutes} min (${journey.travel.model})`;
    case 'already-there':
      return 'You are already in the building from the game before';
    case 'unknown':
      return `When to leave is not known: the ${journey.missing} is missing`;
  }
}

function partnerLine({ assignment, partner }: FeedEntry): string {
  if (partner === null) return 'Partner: not named yet';
  const role = assignment.seat === 'chief' ? seatWords.umpire : seatWords.chief;
  return partner.isMinor ? `Partner (${role}): see the briefing` : `Partner (${role}): ${partner.givenName}`;
}

function venueLines(venue: FeedEntry['venue']): string[] {
  const notes = [
    ['Court', venue.court ?? ''],
    ['Entrance', venue.entrance],
    ['Parking', venue.parking],
    ['Changing room', venue.changingRoom],
  ] as const;
  return notes.filter(([, text]) => text.trim() !== '').map(([label, text]) => `${label}: ${text}`);
}
