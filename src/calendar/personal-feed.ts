import type { CalendarDocument, CalendarEvent } from './calendar-document';
import { eventStates, standingOf } from './event-state';
import { briefingAddress, eventDescription, eventSummary } from './event-text';
import type { FeedEntry, FeedInput } from './feed-input';

const dayMs = 24 * 60 * 60_000;

/** What a feed shows: games of the last 60 and the next 400 days; of those that fell away, the last 14. */
export const feedWindow = { pastDays: 60, comingDays: 400, tombstoneDays: 14 } as const;

/** How often a subscriber is asked to look again. */
const refreshSeconds = 60 * 60;

/** Whether a game is near enough, and an ended one recent enough, to be in the feed. */
export function isInFeed(entry: Pick<FeedEntry, 'assignment' | 'game'>, now: Date): boolean {
  const { reply, endReason, startsAt } = entry.assignment;
  const standing = standingOf({ reply, endReason, gameStatus: entry.game.status });
  const isGone = eventStates[standing].status === 'CANCELLED';
  const pastDays = isGone ? feedWindow.tombstoneDays : feedWindow.pastDays;
  const days = (startsAt.getTime() - now.getTime()) / dayMs;
  return days >= -pastDays && days <= feedWindow.comingDays;
}

/**
 * An official's feed as a value. It depends on nothing but its input: no clock, no random number, so that the
 * same rows give the same bytes and the same entity tag on every machine.
 *
 * An event runs from the moment when both officials must be on court to the planned end of the game, both as
 * the official was told.
 */
export function personalFeed(input: FeedInput): CalendarDocument {
  return {
    name: `${input.association.name}: my games`,
    refreshSeconds,
    events: [...input.entries].sort(byStart).map((entry) => feedEvent(entry, input)),
  };
}

function feedEvent(entry: FeedEntry, input: FeedInput): CalendarEvent {
  const { assignment, game, venue } = entry;
  const standing = standingOf({
    reply: assignment.reply,
    endReason: assignment.endReason,
    gameStatus: game.status,
  });
  return {
    uid: assignment.uid,
    sequence: assignment.sequence,
    createdAt: assignment.createdAt,
    revisedAt: revisedAt(entry),
    startsAt: assignment.dutyStartsAt,
    endsAt: assignment.endsAt,
    ...eventStates[standing],
    summary: eventSummary(entry, standing),
    description: eventDescription(entry, standing, input),
    place: {
      name: venue.court === null ? venue.name : `${venue.name}, ${venue.court}`,
      address: [venue.address, venue.town].filter((part) => part.trim() !== '').join(', '),
      position: venue.place,
    },
    // The briefing is open to the crew only, which the official has left with an event that fell away.
    url: eventStates[standing].status === 'CANCELLED' ? null : briefingAddress(entry, input),
  };
}

/** A status that comes from the game and not from the assignment is as new as the game. */
function revisedAt({ assignment, game }: FeedEntry): Date {
  if (assignment.endReason !== null || game.status === 'CONFIRMED') return assignment.revisedAt;
  return new Date(Math.max(assignment.revisedAt.getTime(), game.updatedAt.getTime()));
}

function byStart(left: FeedEntry, right: FeedEntry): number {
  return (
    left.assignment.startsAt.getTime() - right.assignment.startsAt.getTime() ||
    (left.assignment.uid < right.assignment.uid ? -1 : 1)
  );
}
