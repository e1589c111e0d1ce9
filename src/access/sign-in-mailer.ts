import type { Log } from '../platform/log';

/** A one-time link on its way to the person who asked for it. */
export interface SignInMessage {
  readonly accountId: string;
  readonly email: string;
  readonly displayName: string;
  /** Complete address; a secret until it is used or expires. */
  readonly link: string;
  readonly expiresAt: Date;
}

/** Who brings one-time links to people. */
export interface SignInMailer {
  send(message: SignInMessage): Promise<void>;
}

/** Stands in where no mail server is configured: says so in the log, never the link. */
export class NoSignInMailer implements SignInMailer {
  constructor(private readonly log: Log) {}

  async send(message: SignInMessage): Promise<void> {
    this.log.warn(
      { accountId: message.accountId },
      'somebody asked for a sign-in link, but no mail server is configured (SMTP_URL)',
    );
  }
}
