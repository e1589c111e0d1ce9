import { resolveLocalTime } from '../platform/local-time';

/** A game's tip-off as people write it down. */
export interface LocalTipOff {
  readonly date: string;
  /** `HH:mm` */
  readonly time: string;
  readonly zone: string;
  /** Minutes east of Greenwich, which of two readings is meant where the clocks show the time twice. */
  readonly utcOffset: number | null;
}

/**
 * The instant of a tip-off that is known to have one; the earlier of two where nothing says which.
 *
 * @throws where the clocks skip the time, or where it is no time at all; importing and editing refuse such
 */
export function gameStart(tipOff: LocalTipOff): Date {
  const resolved = resolveLocalTime(tipOff);
  if (resolved.kind === 'instant') return resolved.instant;
  if (resolved.kind === 'overlap') {
    const isLater = tipOff.utcOffset === resolved.later.offsetMinutes;
    return isLater ? resolved.later.instant : resolved.earlier.instant;
  }
  throw new Error(`${tipOff.date} ${tipOff.time} in ${tipOff.zone} is no instant.`);
}
