import { Inject, Injectable } from '@nestjs/common';
import { IsNull, MoreThan, type EntityManager } from 'typeorm';
import { clockToken, type Clock } from '../platform/clock';
import { tokenHash, tokenSourceToken, type TokenSource } from '../platform/random';
import { Tenancy } from '../platform/tenancy';
import { Account } from './account.entity';
import { Association } from './association.entity';
import { Membership } from './membership.entity';
import type { Member, SignedIn } from './member';
import { Session } from './session.entity';

/** How long a session lasts after signing in. */
export const sessionDays = 30;

const dayMs = 86_400_000;
const seenEveryMs = 60 * 60_000;

/** A session as its owner sees it. */
export interface SessionView {
  /** Names the session for signing it out; not its secret. */
  readonly id: string;
  readonly deviceLabel: string;
  readonly createdAt: Date;
  readonly lastSeenAt: Date;
  readonly expiresAt: Date;
  readonly isThisOne: boolean;
}

/** One association that an account belongs to. */
export interface MembershipView {
  readonly slug: string;
  readonly name: string;
  /** IANA zone. */
  readonly timeZone: string;
  readonly roles: Membership['roles'];
}

/** Who a request comes from, and, where an address names an association, as what. */
export interface Identity {
  readonly signedIn: SignedIn;
  /** `null`: no such association, or none of the account's. */
  readonly member: Member | null;
}

/** Signed-in browsers and programs, kept in the database by the hash of their token. */
@Injectable()
export class Sessions {
  constructor(
    private readonly tenancy: Tenancy,
    @Inject(clockToken) private readonly clock: Clock,
    @Inject(tokenSourceToken) private readonly newSecret: TokenSource,
  ) {}

  /** @returns the token, which is shown once and never stored */
  async open(tx: EntityManager, account: { id: string; deviceLabel: string }): Promise<string> {
    const { secret, hash } = this.newSecret();
    const now = this.clock.now();
    await stateAccount(tx, account.id);
    await tx.insert(Session, {
      tokenHash: Buffer.from(hash, 'hex'),
      accountId: account.id,
      deviceLabel: account.deviceLabel.slice(0, 120),
      createdAt: now,
      lastSeenAt: now,
      expiresAt: new Date(now.getTime() + sessionDays * dayMs),
    });
    return secret;
  }

  /** As `open`, in a transaction of its own; for the command on the operator's terminal and for tests. */
  openFor(accountId: string, deviceLabel: string): Promise<string> {
    return this.tenancy.runWith({ accountId }, (tx) => this.open(tx, { id: accountId, deviceLabel }));
  }

  /**
   * Finds who presents a token.
   *
   * @param slug short name of the association that the address names, if any
   * @returns `null` when the token is unknown, expired or signed out, or the account is disabled
   */
  async identify(token: string, slug: string | null, byCookie: boolean): Promise<Identity | null> {
    const hash = tokenHash(token);
    const now = this.clock.now();
    const found = await this.tenancy.readWith({ sessionTokenHash: hash }, async (tx) => {
      const session = await tx.findOneBy(Session, {
        tokenHash: Buffer.from(hash, 'hex'),
        revokedAt: IsNull(),
        expiresAt: MoreThan(now),
      });
      if (session === null) return null;
      await stateAccount(tx, session.accountId);
      const account = await tx.findOneBy(Account, { id: session.accountId, disabledAt: IsNull() });
      if (account === null) return null;
      const signedIn: SignedIn = {
        accountId: account.id,
        displayName: account.displayName,
        email: account.email,
        sessionHash: hash,
        byCookie,
      };
      const member = slug === null ? null : await readMember(tx, signedIn, slug);
      return { signedIn, member, lastSeenAt: session.lastSeenAt };
    });
    if (found === null) return null;
    if (now.getTime() - found.lastSeenAt.getTime() > seenEveryMs) {
      await this.tenancy.runWith({ sessionTokenHash: hash }, (tx) =>
        tx.update(Session, { tokenHash: Buffer.from(hash, 'hex') }, { lastSeenAt: now }),
      );
    }
    return { signedIn: found.signedIn, member: found.member };
  }

  /** The account's live sessions, latest used first. */
  async list(signedIn: SignedIn): Promise<SessionView[]> {
    const sessions = await this.tenancy.readWith({ accountId: signedIn.accountId }, (tx) =>
      tx.find(Session, {
        where: { accountId: signedIn.accountId, revokedAt: IsNull(), expiresAt: MoreThan(this.clock.now()) },
        order: { lastSeenAt: 'DESC' },
      }),
    );
    return sessions.map((session) => ({
      id: session.tokenHash.toString('hex').slice(0, 16),
      deviceLabel: session.deviceLabel,
      createdAt: session.createdAt,
      lastSeenAt: session.lastSeenAt,
      expiresAt: session.expiresAt,
      isThisOne: session.tokenHash.toString('hex') === signedIn.sessionHash,
    }));
  }

  /** Associations of an account, by name. */
  async memberships(accountId: string): Promise<MembershipView[]> {
    return this.tenancy.readWith({ accountId }, async (tx) => {
      const memberships = await tx.findBy(Membership, { accountId });
      const associations = await tx.find(Association, { order: { name: 'ASC' } });
      return associations.flatMap(({ id, slug, name, timeZone }) => {
        const membership = memberships.find(({ associationId }) => associationId === id);
        return membership === undefined ? [] : [{ slug, name, timeZone, roles: membership.roles }];
      });
    });
  }

  /** Ends the session at hand. */
  async signOut(signedIn: SignedIn): Promise<void> {
    await this.tenancy.runWith({ sessionTokenHash: signedIn.sessionHash }, (tx) =>
      tx.update(
        Session,
        { tokenHash: Buffer.from(signedIn.sessionHash, 'hex') },
        { revokedAt: this.clock.now() },
      ),
    );
  }

  /** Ends one session of the account, named by the id that `list` gave it. @returns whether there was one */
  async revoke(signedIn: SignedIn, id: string): Promise<boolean> {
    return this.tenancy.runWith({ accountId: signedIn.accountId }, async (tx) => {
      const sessions = await tx.findBy(Session, { accountId: signedIn.accountId, revokedAt: IsNull() });
      const session = sessions.find(({ tokenHash: hash }) => hash.toString('hex').slice(0, 16) === id);
      if (session === undefined) return false;
      await tx.update(Session, { tokenHash: session.tokenHash }, { revokedAt: this.clock.now() });
      return true;
    });
  }
}

/** States whose rows the transaction at hand may see from here on, once a token has proven the account. */
export async function stateAccount(tx: EntityManager, accountId: string): Promise<void> {
  await tx.query(`select set_config('crewloom.account_id', $1, true)`, [accountId]);
}

async function readMember(tx: EntityManager, signedIn: SignedIn, slug: string): Promise<Member | null> {
  const association = await tx.findOneBy(Association, { slug });
  if (association === null) return null;
  const membership = await tx.findOneBy(Membership, {
    associationId: association.id,
    accountId: signedIn.accountId,
  });
  if (membership === null) return null;
  return {
    ...signedIn,
    associationId: association.id,
    association: {
      slug: association.slug,
      name: association.name,
      timeZone: association.timeZone,
      language: association.language,
      currency: association.currency,
    },
    roles: membership.roles,
    officialId: membership.officialId,
  };
}
