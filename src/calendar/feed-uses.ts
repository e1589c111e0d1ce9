import type { Log } from '../platform/log';
import type { Tenancy } from '../platform/tenancy';
import { FeedToken } from './feed-token.entity';
import type { UsedToken } from './personal-feeds.service';

/** A use is written down only when the one written before is at least this old. */
const writtenEveryMs = 15 * 60_000;

interface Use {
  readonly associationId: string;
  readonly at: Date;
  readonly userAgent: string;
}

/**
 * Remembers when and by which program a feed was fetched last. Reading a feed must change nothing that it shows
 * (RFC 9110 §9.2.1), and many programs look every few minutes, so uses are gathered and written together.
 */
export class FeedUses {
  private readonly waiting = new Map<string, Use>();
  private timer: NodeJS.Timeout | null = null;

  constructor(
    private readonly tenancy: Tenancy,
    private readonly log: Log,
    private readonly everyMs = 60_000,
  ) {}

  note(token: UsedToken, at: Date, userAgent: string): void {
    const last = token.lastUsedAt?.getTime() ?? -Infinity;
    if (at.getTime() - last < writtenEveryMs) return;
    this.waiting.set(token.id, { associationId: token.associationId, at, userAgent: cleaned(userAgent) });
    this.timer ??= setTimeout(() => void this.write(), this.everyMs).unref();
  }

  /** Writes what has been gathered; called by a timer, and before the process ends. */
  async write(): Promise<void> {
    if (this.timer !== null) clearTimeout(this.timer);
    this.timer = null;
    const uses = [...this.waiting];
    this.waiting.clear();
    for (const [id, { associationId, at, userAgent }] of uses) {
      try {
        await this.tenancy.run(associationId, (tx) =>
          tx.update(FeedToken, { associationId, id }, { lastUsedAt: at, lastUserAgent: userAgent }),
        );
      } catch (error) {
        // Losing one is harmless: the next fetch notes it again.
        this.log.warn({ err: error, feedTokenId: id }, 'the use of a feed could not be written down');
      }
    }
  }
}

function cleaned(userAgent: string): string {
  return userAgent.replace(/[^\x20-\x7e]/g, '').slice(0, 200);
}
