import { resolveLocalTime } from '../platform/local-time';

/**
 * The first instant of a local date, milliseconds since 1970. Where the clocks skip midnight, the moment of
 * the skip; where they show it twice, the first.
 */
export function startOfDay(date: string, zone: string): number {
  const resolved = resolveLocalTime({ date, time: '00:00', zone });
  switch (resolved.kind) {
    case 'instant':
      return resolved.instant.getTime();
    case 'overlap':
      return resolved.earlier.instant.getTime();
    case 'gap':
      return resolved.changesAt.getTime();
    case 'invalid':
      throw new Error(resolved.faults.map(({ message }) => message).join(' '));
  }
}
