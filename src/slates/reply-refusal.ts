import type { ReplyOutcome } from './reply.service';

const endWords = {
  replaced: 'somebody else has it now',
  declined: 'you gave it back before',
  withdrawn: 'it was taken back',
  'game-cancelled': 'the game is cancelled',
} as const;

/** Why a reply could not be taken, for the person who gave it; `null` when it was. */
export function replyRefusal(outcome: Exclude<ReplyOutcome, { kind: 'not-found' }>): string | null {
  switch (outcome.kind) {
    case 'recorded':
    case 'unchanged':
      return null;
    case 'changed':
      return 'The game has changed since you looked. This is how it stands now; please answer again.';
    case 'ended':
      return `You are no longer assigned to this game: ${endWords[outcome.reason]}.`;
    case 'too-late':
      return 'The game has begun. Call your assignor.';
  }
}
