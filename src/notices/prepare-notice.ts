import type { EntityManager } from 'typeorm';
import { Association } from '../access/association.entity';
import { Venue } from '../places/venue.entity';
import { localParts } from '../platform/local-time';
import { isMinorOn } from '../roster/minors';
import { Official } from '../roster/official.entity';
import { Assignment } from '../slates/assignment.entity';
import { readGameCards } from '../slates/game-cards.query';
import { assignmentMail } from './assignment-mail';
import type { Mail } from './mail';
import { isOvertaken, type ClaimedMessage } from './outbox';

export type PreparedNotice =
  | { readonly kind: 'mail'; readonly mail: Mail }
  /** Nobody needs it any more. */
  | { readonly kind: 'superseded' }
  | { readonly kind: 'undeliverable'; readonly fault: string };

/**
 * Writes a queued message out, from how things stand now and not from how they stood when it was queued. What
 * has been overtaken by a newer message, answered meanwhile, or is over, is not sent.
 */
export async function prepareNotice(
  tx: EntityManager,
  message: ClaimedMessage,
  options: { readonly now: Date; readonly publicUrl: string },
): Promise<PreparedNotice> {
  const { associationId, assignmentId, kind } = message;
  if (kind === 'sign-in' || assignmentId === null) {
    return { kind: 'undeliverable', fault: 'Messages of this kind do not pass through the outbox.' };
  }
  const assignment = await tx.findOneBy(Assignment, { associationId, id: assignmentId });
  if (assignment === null || !isStillNews(kind, assignment, options.now)) return { kind: 'superseded' };
  if (await isOvertaken(tx, message)) return { kind: 'superseded' };

  const association = await tx.findOneByOrFail(Association, { id: associationId });
  const official = await tx.findOneByOrFail(Official, { associationId, id: assignment.officialId });
  const venue = await tx.findOneByOrFail(Venue, { associationId, id: assignment.venueId });
  const game = (await readGameCards(tx, associationId, [assignment.gameId])).get(assignment.gameId);
  if (game === undefined) throw new Error(`Game ${assignment.gameId} is referred to and not there.`);
  const { date } = localParts(assignment.startsAt, venue.timeZone);
  const mail = assignmentMail({
    kind,
    association,
    publicUrl: options.publicUrl,
    official: { ...official, isMinor: isMinorOn(official.birthDate, date, association.policy.adultAge) },
    assignment,
    game: {
      id: game.id,
      number: game.number,
      division: game.division.name,
      home: game.home.name,
      away: game.away.name,
    },
    venue: { ...venue, court: game.venue.id === venue.id ? (game.court?.name ?? null) : null },
  });
  return mail === null
    ? { kind: 'undeliverable', fault: `Official ${official.number} has no e-mail address.` }
    : { kind: 'mail', mail };
}

function isStillNews(
  kind: 'assigned' | 'changed' | 'ended' | 'reminder',
  assignment: Assignment,
  now: Date,
): boolean {
  if (assignment.endsAt.getTime() <= now.getTime()) return false;
  if (kind === 'ended') return assignment.endedAt !== null;
  return assignment.endedAt === null && assignment.reply === 'NEEDS-ACTION';
}
