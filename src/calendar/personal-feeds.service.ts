import { createHash } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import { Association } from '../access/association.entity';
import type { Clock } from '../platform/clock';
import { tokenHash } from '../platform/random';
import type { Tenancy } from '../platform/tenancy';
import { renderCalendar } from './calendar-bytes';
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

// The revision counts what publishing and replying change. Names, venue notes and travel times change
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
      const state = await readFeedState(tx, associationId, officialId);
      if (state === null || (options.onlyActive === true && !state.isActive)) return null;
      const publicUrl = this.publicUrl();
      // The day is part of it because events enter and leave the feed as days pass.
      const version = [state.version, now.toISOString().slice(0, 10), publicUrl].join(' ');
      const key = `${associationId} ${officialId}`;
      const recent = this.texts.find(key, version, now);
      if (recent !== null) return recent;
      const feed = await this.render(tx, { associationId, officialId, version, publicUrl, now });
      if (feed !== null) this.texts.keep(key, feed);
      return feed;
    });
  }

  private async render(
    tx: EntityManager,
    of: {
      readonly associationId: string;
      readonly officialId: string;
      readonly version: string;
      readonly publicUrl: string;
      readonly now: Date;
    },
  ): Promise<RenderedFeed | null> {
    const association = await tx.findOneByOrFail(Association, { id: of.associationId });
    const input = await readFeedInput(tx, { ...of, association });
    if (input === null) return null;
    const body = renderCalendar(personalFeed(input));
    const entityTag = `"${createHash('sha256').update(body).digest('base64url')}"`;
    return { body, entityTag, version: of.version, renderedAt: of.now.getTime() };
  }
}

/** All that tells whether a rendered feed is still current, in one look-up by keys. */
async function readFeedState(
  tx: EntityManager,
  associationId: string,
  officialId: string,
): Promise<{ readonly isActive: boolean; readonly version: string } | null> {
  const [row] = await tx.query<{ isActive: boolean; version: string }[]>(
    `select official.active as "isActive",
            concat_ws(' ', coalesce(feed_revision.revision, 0), association.version, official.version) as version
       from official
       join association on association.id = official.association_id
       left join feed_revision on feed_revision.association_id = official.association_id
        and feed_revision.official_id = official.id
      where official.association_id = $1 and official.id = $2`,
    [associationId, officialId],
  );
  return row ?? null;
}
