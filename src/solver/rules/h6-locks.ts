import { NOBODY, SEAT_FREE, SEAT_KEPT_OPEN } from '../compile/facts';
import { type HardRule } from './hard-rule';

export const locksRule: HardRule = {
  id: 'H6',
  title: 'Locked seats',
  onHolder(facts, seat, holder) {
    const lock = facts.seatLock[seat]!;
    if (lock === SEAT_FREE) return null;
    const seatName = (seat & 1) === 0 ? 'chief' : 'umpire';
    if (lock === SEAT_KEPT_OPEN)
      return holder === NOBODY ? null : `the ${seatName} seat is kept open on purpose`;
    return holder === lock ? null : `the ${seatName} seat is locked to ${facts.officialIds[lock]}`;
  },
};
