import { createHash } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import { Association } from '../access/association.entity';
import { Official } from '../roster/official.entity';
import type { Clock } from '../platform/clock';
import { tokenHash } from '../platform/random';
import type { Tenancy } from '../platform/tenancy';
import { renderCalendar } from './calendar-bytes';
import { FeedRevision } from './feed-revision.entity';
import { FeedToken } from './feed-token.entity';
import { personalFeed } from './personal-feed';
import { readFeedInput } from './read-feed-input';
import { RecentTexts, type RenderedFeed } from './recent-texts';

/** What a secret address leads to. */
export type FeedAnswer =
  | { readonly kind: 'feed'; readonly feed: RenderedFeed; readonly token: UsedToken }
  /** Revoked, or of an official who has left. */
  | { readonly kind: 'revoked' }
  | { readonly kind: 'unknown' };

export interface UsedToken {
  readonly associationId: string;
  readonly id: string;
  readonly lastUsedAt: Date | null;
}

const secretForm = /^[A-Za-z0-9_-]{43}$/;

// The revision counts what publishing and replying change. Names, venue notes, conflicts of zone data and travel times change
// without it; ten minutes is far below the interval at which any calendar service looks.
const keptTexts = { max: 1000, millisecondsMax: 10 * 60_000 };

/** Officials' feeds, rendered once for each state of the database. */
export class PersonalFeedsService {
  private readonly texts = new RecentTexts(keptTexts);

  constructor(
    private readonly tenancy: Tenancy,
    private readonly clock: Clock,
    /** Address of the service, without a trailing slash. */
    private readonly publicUrl: () => string,
  ) {}

  /** @param secret the part of a feed address that only its owner knows */
  async answer(secret: string): Promise<FeedAnswer> {
    if (!secretForm.test(secret)) return { kind: 'unknown' };
    const hash = tokenHash(secret);
    const token = await this.tenancy.readWith({ feedTokenHash: hash }, (tx) =>
      tx.findOneBy(FeedToken, { tokenHash: Buffer.from(hash, 'hex') }),
    );
    if (token === null) return { kind: 'unknown' };
    if (token.revokedAt !== null) return { kind: 'revoked' };
    const feed = await this.feedOf(token.associationId, token.officialId, { onlyActive: true });
    if (feed === null) return { kind: 'revoked' };
    const { associationId, id, lastUsedAt } = token;
    return { kind: 'feed', feed, token: { associationId, id, lastUsedAt } };
  }

  /**
   * The feed of an official, without a secret; for their own pages and the operator's terminal.
   *
   * @returns null when the association has no such official, or with `onlyActive` when they have left
   */
  async feedOf(
    associationId: string,
    officialId: string,
    options: { readonly onlyActive?: boolean } = {},
  ): Promise<RenderedFeed | null> {
    const now = this.clock.now();
    return this.tenancy.read(associationId, async (tx) => {
      const official = await tx.findOneBy(Official, { associationId, id: officialId });
      if (official === null || (options.onlyActive === true && !official.active)) return null;
      const association = await tx.findOneByOrFail(Association, { id: associationId });
      const revision = await tx.findOneBy(FeedRevision, { associationId, officialId });
      const publicUrl = this.publicUrl();
      // The day is part of it because events enter and leave the feed as days pass.
      const version = [
        revision?.revision ?? '0',
        association.version,
        official.version,
        now.toISOString().slice(0, 10),
        publicUrl,
      ].join(' ');
      const key = `${associationId} ${officialId}`;
      const recent = this.texts.find(key, version, now);
      if (recent !== null) return recent;
      const feed = await this.render(tx, { association, officialId, version, publicUrl, now });
      if (feed !== null) this.texts.keep(key, feed);
      return feed;
    });
  }

  private async render(
    tx: EntityManager,
    of: {
      readonly association: Association;
      readonly officialId: string;
      readonly version: string;
      readonly publicUrl: string;
      readonly now: Date;
    },
  ): Promise<RenderedFeed | null> {
    const input = await readFeedInput(tx, of);
    if (input === null) return null;
    const body = renderCalendar(personalFeed(input));
    const entityTag = `"${createHash('sha256').update(body).digest('base64url')}"`;
    return { body, entityTag, version: of.version, renderedAt: of.now.getTime() };
  }
}
