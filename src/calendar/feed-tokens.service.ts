import { Inject, Injectable } from '@nestjs/common';
import { randomUUID } from 'node:crypto';
import { IsNull, type EntityManager } from 'typeorm';
import { AuditTrail } from '../access/audit-trail';
import { clockToken, type Clock } from '../platform/clock';
import { tokenSourceToken, type TokenSource } from '../platform/random';
import { Tenancy } from '../platform/tenancy';
import { FeedToken } from './feed-token.entity';

/** Live addresses of one official at most; enough for every device of a household. */
export const liveFeedsMax = 10;

/** Whose feed addresses, and who asks: the official, or an administrator for them. */
export interface FeedOwner {
  readonly associationId: string;
  readonly officialId: string;
  /** Null for the service itself. */
  readonly accountId: string | null;
}

/** A feed address without its secret. */
export interface FeedAddress {
  readonly id: string;
  readonly name: string;
  readonly createdAt: Date;
  readonly lastUsedAt: Date | null;
  readonly lastUserAgent: string;
}

export type NewFeedOutcome =
  /** The secret is in this answer only. */
  | { readonly kind: 'made'; readonly id: string; readonly secret: string }
  | { readonly kind: 'too-many'; readonly max: number };

/** An official's feed addresses: made, named, replaced and revoked. Only hashes of their secrets are kept. */
@Injectable()
export class FeedTokensService {
  constructor(
    private readonly tenancy: Tenancy,
    private readonly audit: AuditTrail,
    @Inject(clockToken) private readonly clock: Clock,
    @Inject(tokenSourceToken) private readonly newToken: TokenSource,
  ) {}

  /** @param name what the official calls the device or program, such as "phone" */
  async make(owner: FeedOwner, name: string): Promise<NewFeedOutcome> {
    return this.tenancy.run(owner.associationId, async (tx) => {
      const live = await tx.countBy(FeedToken, { ...rowsOf(owner), revokedAt: IsNull() });
      if (live >= liveFeedsMax) return { kind: 'too-many', max: liveFeedsMax };
      return this.insert(tx, owner, name);
    });
  }

  async list(owner: Pick<FeedOwner, 'associationId' | 'officialId'>): Promise<FeedAddress[]> {
    const rows = await this.tenancy.read(owner.associationId, (tx) =>
      tx.find(FeedToken, {
        where: { ...rowsOf(owner), revokedAt: IsNull() },
        order: { createdAt: 'ASC', id: 'ASC' },
      }),
    );
    return rows.map(({ id, name, createdAt, lastUsedAt, lastUserAgent }) => ({
      id,
      name,
      createdAt,
      lastUsedAt,
      lastUserAgent,
    }));
  }

  /** @returns false when the official has no such live address */
  async revoke(owner: FeedOwner, id: string): Promise<boolean> {
    return this.tenancy.run(owner.associationId, (tx) => this.end(tx, owner, id));
  }

  /** Revokes an address and makes one of the same name; null when the official has no such live address. */
  async rotate(owner: FeedOwner, id: string): Promise<NewFeedOutcome | null> {
    return this.tenancy.run(owner.associationId, async (tx) => {
      const row = await tx.findOneBy(FeedToken, { ...rowsOf(owner), id, revokedAt: IsNull() });
      if (row === null || !(await this.end(tx, owner, id))) return null;
      return this.insert(tx, owner, row.name);
    });
  }

  private async insert(tx: EntityManager, owner: FeedOwner, name: string): Promise<NewFeedOutcome> {
    const { secret, hash } = this.newToken();
    const id = randomUUID();
    await tx.insert(FeedToken, {
      ...rowsOf(owner),
      id,
      tokenHash: Buffer.from(hash, 'hex'),
      name: name.trim().slice(0, 60),
      createdAt: this.clock.now(),
      revokedAt: null,
      lastUsedAt: null,
      lastUserAgent: '',
    });
    await this.note(tx, owner, id, 'feed.made');
    return { kind: 'made', id, secret };
  }

  private async end(tx: EntityManager, owner: FeedOwner, id: string): Promise<boolean> {
    const ended = await tx.update(
      FeedToken,
      { ...rowsOf(owner), id, revokedAt: IsNull() },
      { revokedAt: this.clock.now() },
    );
    if (ended.affected !== 1) return false;
    await this.note(tx, owner, id, 'feed.revoked');
    return true;
  }

  private async note(tx: EntityManager, owner: FeedOwner, id: string, action: string): Promise<void> {
    await this.audit.write(tx, {
      associationId: owner.associationId,
      accountId: owner.accountId,
      action,
      objectKind: 'feed_token',
      objectId: id,
    });
  }
}

function rowsOf({ associationId, officialId }: Pick<FeedOwner, 'associationId' | 'officialId'>) {
  return { associationId, officialId };
}
