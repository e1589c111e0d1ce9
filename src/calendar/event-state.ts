import type { Assignment } from '../slates/assignment.entity';
import type { EventState } from './calendar-document';

/** Why an event stands as it does; each has its own words in the summary. */
export type Standing =
  'asked' | 'accepted' | 'date open' | 'declined' | 'no longer assigned' | 'game cancelled';

export type StandingFacts = Pick<Assignment, 'reply' | 'endReason'> & {
  /** The game's own status now. */
  readonly gameStatus: 'TENTATIVE' | 'CONFIRMED' | 'CANCELLED';
};

/** What has become of an assignment, the strongest news first. */
export function standingOf({ reply, endReason, gameStatus }: StandingFacts): Standing {
  if (endReason === 'game-cancelled' || (endReason === null && gameStatus === 'CANCELLED')) {
    return 'game cancelled';
  }
  if (endReason === 'declined' || reply === 'DECLINED') return 'declined';
  if (endReason !== null) return 'no longer assigned';
  if (gameStatus === 'TENTATIVE') return 'date open';
  return reply === 'ACCEPTED' ? 'accepted' : 'asked';
}

const gone: EventState = { status: 'CANCELLED', transparency: 'TRANSPARENT', busyStatus: 'FREE' };
const held: EventState = { status: 'TENTATIVE', transparency: 'OPAQUE', busyStatus: 'TENTATIVE' };

/** How calendar programs are told of each standing. */
export const eventStates: Readonly<Record<Standing, EventState>> = {
  asked: held,
  accepted: { status: 'CONFIRMED', transparency: 'OPAQUE', busyStatus: 'BUSY' },
  // The time stays held: a free slot would invite another booking while the game may still be played.
  'date open': held,
  declined: gone,
  'no longer assigned': gone,
  'game cancelled': gone,
};

/** Put before the summary, since programs differ in what they make of STATUS; accepted games need no word. */
export const standingWords: Readonly<Record<Standing, string>> = {
  asked: 'TENTATIVE – ',
  accepted: '',
  'date open': 'DATE OPEN – ',
  declined: 'CANCELLED (you declined) – ',
  'no longer assigned': 'CANCELLED (no longer yours) – ',
  'game cancelled': 'CANCELLED – ',
};
