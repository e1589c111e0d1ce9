import type { SeatName } from './seat-name';

/** The two seats as people say them. */
export const seatWords: Readonly<Record<SeatName, string>> = { chief: 'crew chief', umpire: 'umpire' };
