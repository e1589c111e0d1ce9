import { createHash } from 'node:crypto';
import type { SignInMailer, SignInMessage } from '../access/sign-in-mailer';
import type { SmtpMailer } from './smtp-mailer';

/**
 * Brings one-time sign-in links by mail at once. They do not pass through the outbox: a secret that is good for
 * minutes should neither be stored nor arrive late.
 */
export class SmtpSignInMailer implements SignInMailer {
  constructor(private readonly mailer: Pick<SmtpMailer, 'send'>) {}

  async send(message: SignInMessage): Promise<void> {
    const until = message.expiresAt.toISOString().slice(11, 16);
    await this.mailer.send({
      fromName: 'Crewloom',
      replyTo: null,
      to: { name: message.displayName, address: message.email },
      cc: null,
      subject: 'Your link to sign in',
      content: {
        greeting: `Hello ${message.displayName},`,
        paragraphs: [
          `Open this link and press the button there to sign in. It works once, until ${until} UTC.`,
          'If you did not ask for it, leave it: nobody gets in without it.',
        ],
        facts: [],
        links: [{ label: 'Sign in', address: message.link }],
        closing: 'Do not pass this message on.',
      },
      // Not the token: a Message-ID stands in logs of many mail servers.
      messageKey: `sign-in.${createHash('sha256').update(message.link).digest('hex').slice(0, 32)}`,
      threadKey: null,
    });
  }
}
