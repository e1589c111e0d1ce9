import { localParts } from '../platform/local-time';
import type { Assignment } from '../slates/assignment.entity';
import { calendarDay } from '../web/format/instants';
import { isMailAddress, type Mail, type MailContent } from './mail';

/** What a message about one assignment is made from. */
export interface AssignmentNotice {
  readonly kind: 'assigned' | 'changed' | 'ended' | 'reminder';
  readonly association: {
    readonly name: string;
    readonly slug: string;
    readonly language: string;
    readonly replyAddress: string | null;
  };
  /** Address of the service, without a trailing slash. */
  readonly publicUrl: string;
  readonly official: {
    readonly givenName: string;
    readonly familyName: string;
    readonly email: string | null;
    /** On the day of the game. */
    readonly isMinor: boolean;
    readonly guardianName: string;
    readonly guardianContact: string;
  };
  readonly assignment: Pick<
    Assignment,
    'id' | 'sequence' | 'seat' | 'startsAt' | 'dutyStartsAt' | 'endReason'
  >;
  readonly game: {
    readonly id: string;
    readonly number: string;
    readonly division: string;
    readonly home: string;
    readonly away: string;
  };
  readonly venue: {
    readonly name: string;
    readonly address: string;
    readonly town: string;
    readonly timeZone: string;
    readonly court: string | null;
  };
}

const roleWords = { chief: 'crew chief', umpire: 'umpire' } as const;

/** The message, or null when nobody can be written to. A minor's guardian gets it too, and alone where the minor has no address. */
export function assignmentMail(notice: AssignmentNotice): Mail | null {
  const { association, official, assignment } = notice;
  const own =
    official.email !== null && isMailAddress(official.email)
      ? { name: `${official.givenName} ${official.familyName}`, address: official.email }
      : null;
  const guardian =
    official.isMinor && isMailAddress(official.guardianContact.trim())
      ? { name: official.guardianName, address: official.guardianContact.trim() }
      : null;
  const to = own ?? guardian;
  if (to === null) return null;
  return {
    fromName: association.name,
    replyTo:
      association.replyAddress !== null && isMailAddress(association.replyAddress)
        ? association.replyAddress
        : null,
    to,
    cc: own === null ? null : guardian,
    subject: subjectOf(notice),
    content: contentOf(notice),
    messageKey: `${assignment.id}.${assignment.sequence}.${notice.kind}`,
    threadKey: `${assignment.id}.thread`,
  };
}

function subjectOf(notice: AssignmentNotice): string {
  const { assignment, game, venue, association } = notice;
  const { date, time } = localParts(assignment.startsAt, venue.timeZone);
  const when = `${calendarDay(date, association.language)}, ${time}`;
  const what = `${game.home} v ${game.away}`;
  switch (notice.kind) {
    case 'assigned':
      return `Please reply: ${roleWords[assignment.seat]}, ${what}, ${when}`;
    case 'changed':
      return `Changed, please reply again: ${what}, ${when}`;
    case 'reminder':
      return `Reminder, please reply: ${what}, ${when}`;
    case 'ended':
      return assignment.endReason === 'game-cancelled'
        ? `Cancelled: ${what}, ${when}`
        : `No longer yours: ${what}, ${when}`;
  }
}

function contentOf(notice: AssignmentNotice): MailContent {
  const { association, official, game, publicUrl, kind } = notice;
  const home = `${publicUrl}/${association.slug}`;
  return {
    greeting: `Hello ${official.givenName},`,
    paragraphs: [leadOf(notice)],
    facts: factsOf(notice),
    links:
      kind === 'ended'
        ? [{ label: 'Your games', address: `${home}/my-games` }]
        : [
            { label: 'Accept or decline', address: `${home}/my-games` },
            { label: 'Briefing', address: `${home}/games/${game.id}/briefing` },
          ],
    closing:
      association.replyAddress === null
        ? `${association.name}. Talk to your assignor if something is not right.`
        : `${association.name}. Answer this message if something is not right: it reaches a person.`,
  };
}

function leadOf({ kind, assignment }: AssignmentNotice): string {
  switch (kind) {
    case 'assigned':
      return `You are asked to be the ${roleWords[assignment.seat]} of this game. Please say yes or no soon, so that somebody else can be asked in time.`;
    case 'changed':
      return 'Something about this game has changed. Below is how it stands now; please say again whether you can come.';
    case 'reminder':
      return 'You have not replied to this game yet. Please say yes or no.';
    case 'ended':
      return assignment.endReason === 'game-cancelled'
        ? 'This game is cancelled. You need not come.'
        : 'You are no longer assigned to this game. You need not come.';
  }
}

function factsOf({ kind, assignment, game, venue, association }: AssignmentNotice): MailContent['facts'] {
  const tipOff = localParts(assignment.startsAt, venue.timeZone);
  const day = `${calendarDay(tipOff.date, association.language)} ${tipOff.date.slice(0, 4)}`;
  const place = [venue.name, venue.court ?? '', venue.address, venue.town].filter((part) => part !== '');
  return [
    { label: 'Game', text: `${game.home} v ${game.away} (${game.number}, ${game.division})` },
    { label: 'Tip-off', text: `${tipOff.time}, ${day} (${venue.timeZone}, ${tipOff.abbreviation})` },
    ...(kind === 'ended'
      ? []
      : [{ label: 'On court', text: localParts(assignment.dutyStartsAt, venue.timeZone).time }]),
    { label: 'Where', text: place.join(', ') },
    { label: 'Your role', text: roleWords[assignment.seat] },
  ];
}
