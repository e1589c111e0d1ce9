import type { MarkState } from '../web/parts/mark';
import type { CrewSeat } from './slate-crews.query';

/** How things stand with one seat, as a mark and the words that say it. */
export interface SeatState {
  readonly mark: MarkState;
  readonly words: string;
}

/** Reads off a seat what an assignor must know at a glance. */
export function seatState({ official, locked, told, declinedBy }: CrewSeat): SeatState {
  if (official === null) {
    if (locked) return { mark: 'none', words: 'kept open' };
    const decliners = declinedBy.map(({ name }) => name).join(', ');
    if (decliners !== '') return { mark: 'declined', words: `open, declined by ${decliners}` };
    return { mark: 'open', words: 'open' };
  }
  if (told === null)
    return { mark: locked ? 'locked' : 'planned', words: locked ? 'locked, not told yet' : 'not told yet' };
  if (told.official.id !== official.id) {
    return { mark: 'attention', words: `not told yet, in place of ${told.official.name}` };
  }
  return told.reply === 'ACCEPTED'
    ? { mark: 'accepted', words: 'accepted' }
    : { mark: 'asked', words: 'no answer yet' };
}
