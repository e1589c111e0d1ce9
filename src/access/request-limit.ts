import type { Clock } from '../platform/clock';
import { RequestError } from '../platform/request-error';

// Beyond this many callers in one window the oldest are forgotten, so that the table cannot grow without end.
const callersMax = 10_000;

/** Counts requests a caller in windows of fixed length, in this process alone. */
export class RequestLimit {
  private readonly counts = new Map<string, { startedAt: number; count: number }>();

  constructor(
    private readonly clock: Clock,
    private readonly options: { readonly max: number; readonly windowMinutes: number },
  ) {}

  /** @throws {RequestError} `REQUEST.TOO_MANY` when the caller has used up the window */
  count(caller: string): void {
    const now = this.clock.now().getTime();
    const windowMs = this.options.windowMinutes * 60_000;
    const known = this.counts.get(caller);
    const current =
      known !== undefined && now - known.startedAt < windowMs ? known : { startedAt: now, count: 0 };
    current.count += 1;
    this.counts.delete(caller);
    this.counts.set(caller, current);
    const [oldest] = this.counts.keys();
    if (this.counts.size > callersMax && oldest !== undefined) this.counts.delete(oldest);
    if (current.count > this.options.max) {
      const seconds = Math.ceil((current.startedAt + windowMs - now) / 1000);
      throw new RequestError('REQUEST.TOO_MANY', { headers: { 'retry-after': String(seconds) } });
    }
  }
}
