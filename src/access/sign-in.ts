import { IsNull, MoreThan } from 'typeorm';
import type { Clock } from '../platform/clock';
import type { Log } from '../platform/log';
import { tokenHash, type TokenSource } from '../platform/random';
import type { Tenancy } from '../platform/tenancy';
import { Account } from './account.entity';
import { stateAccount, type Sessions } from './sessions';
import { SignInLink } from './sign-in-link.entity';
import type { SignInMailer } from './sign-in-mailer';

/** How long a one-time link is good for. */
export const linkMinutes = 15;
/** Live links of one account at most, so that nobody's mailbox is flooded. */
const liveLinksMax = 5;

/** What using a link came to. */
export type SignInOutcome =
  | { readonly kind: 'signed-in'; readonly sessionToken: string; readonly accountId: string }
  /** Used, expired, never given out, or of a disabled account; the caller learns no more. */
  | { readonly kind: 'refused' };

export interface SignInOptions {
  readonly tenancy: Tenancy;
  readonly clock: Clock;
  readonly log: Log;
  readonly sessions: Sessions;
  readonly mailer: SignInMailer;
  /** Address under which people reach the service, without a trailing slash. */
  readonly publicUrl: () => string;
  readonly newSecret: TokenSource;
}

/** Signing in without a password: a one-time link by e-mail, of which only the hash is kept. */
export class SignIn {
  private readonly underWay = new Set<Promise<void>>();

  constructor(private readonly options: SignInOptions) {}

  /**
   * Sends a link to an address that belongs to an account. It works after the caller has its answer, which is the same either
   * way, so that neither the answer nor its time tells whether the address is known.
   *
   * @param next path to go to after signing in
   */
  ask(email: string, next: string): void {
    const work: Promise<void> = this.sendLink(email.trim().toLowerCase(), next)
      .catch((error: unknown) => this.options.log.error({ err: error }, 'a sign-in link could not be sent'))
      .finally(() => this.underWay.delete(work));
    this.underWay.add(work);
  }

  /** Resolves once every link that was asked for is sent. */
  async settled(): Promise<void> {
    await Promise.all(this.underWay);
  }

  /**
   * Makes a link without sending it; for the operator's own terminal and for tests.
   *
   * @returns `null` when no account has the address
   */
  async linkFor(email: string, next: string): Promise<string | null> {
    const made = await this.makeLink(email.trim().toLowerCase(), next);
    return made?.link ?? null;
  }

  /** Whether a link could be used now. Looking changes nothing: programs that scan mail open every link. */
  async isGood(token: string): Promise<boolean> {
    const hash = tokenHash(token);
    return this.options.tenancy.readWith({ linkTokenHash: hash }, (tx) =>
      tx.existsBy(SignInLink, {
        tokenHash: Buffer.from(hash, 'hex'),
        usedAt: IsNull(),
        expiresAt: MoreThan(this.options.clock.now()),
      }),
    );
  }

  /** Uses a link up and opens a session. Of two at once one is refused. */
  async use(token: string, deviceLabel: string): Promise<SignInOutcome> {
    const hash = tokenHash(token);
    const now = this.options.clock.now();
    return this.options.tenancy.runWith({ linkTokenHash: hash }, async (tx): Promise<SignInOutcome> => {
      const link = { tokenHash: Buffer.from(hash, 'hex') };
      const used = await tx.update(
        SignInLink,
        { ...link, usedAt: IsNull(), expiresAt: MoreThan(now) },
        { usedAt: now },
      );
      if (used.affected !== 1) return { kind: 'refused' };
      const { accountId } = await tx.findOneByOrFail(SignInLink, link);
      await stateAccount(tx, accountId);
      if (!(await tx.existsBy(Account, { id: accountId, disabledAt: IsNull() }))) return { kind: 'refused' };
      const sessionToken = await this.options.sessions.open(tx, { id: accountId, deviceLabel });
      return { kind: 'signed-in', sessionToken, accountId };
    });
  }

  private async sendLink(email: string, next: string): Promise<void> {
    const made = await this.makeLink(email, next);
    if (made === null) return;
    await this.options.mailer.send({
      accountId: made.account.id,
      email: made.account.email,
      displayName: made.account.displayName,
      link: made.link,
      expiresAt: made.expiresAt,
    });
  }

  private async makeLink(
    email: string,
    next: string,
  ): Promise<{ account: Account; link: string; expiresAt: Date } | null> {
    const { tenancy, clock, publicUrl, newSecret } = this.options;
    if (!isAddress(email)) return null;
    const account = await tenancy.readWith({ accountEmail: email }, (tx) =>
      tx.findOneBy(Account, { email, disabledAt: IsNull() }),
    );
    if (account === null) return null;
    const { secret, hash } = newSecret();
    const now = clock.now();
    const expiresAt = new Date(now.getTime() + linkMinutes * 60_000);
    const isMade = await tenancy.runWith({ accountId: account.id }, async (tx) => {
      const live = await tx.countBy(SignInLink, {
        accountId: account.id,
        usedAt: IsNull(),
        expiresAt: MoreThan(now),
      });
      if (live >= liveLinksMax) return false;
      const tokenHash = Buffer.from(hash, 'hex');
      await tx.insert(SignInLink, { tokenHash, accountId: account.id, createdAt: now, expiresAt });
      return true;
    });
    if (!isMade) return null;
    const query = next === '/' ? '' : `?next=${encodeURIComponent(next)}`;
    return { account, link: `${publicUrl()}/sign-in/${secret}${query}`, expiresAt };
  }
}

/** Whether a text may be looked up as an e-mail address; the mail server judges whether it is one. */
function isAddress(text: string): boolean {
  return text.length <= 254 && /^[^\s@]+@[^\s@]+$/.test(text);
}
