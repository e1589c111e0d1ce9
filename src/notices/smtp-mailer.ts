import { createTransport } from 'nodemailer';
import type { Mail } from './mail';
import { mailHtml, mailText } from './mail-body';

/** Hands messages to a mail server. */
export class SmtpMailer {
  private readonly transport;

  /**
   * @param options.smtpUrl `smtp://` or `smtps://`, with user and password where the server asks for them
   * @param options.publicUrl address of the service; its host is the sender's domain
   */
  constructor(private readonly options: { readonly smtpUrl: string; readonly publicUrl: () => string }) {
    this.transport = createTransport({
      url: options.smtpUrl,
      // Nothing that a message says may make the service read a file or fetch an address.
      disableFileAccess: true,
      disableUrlAccess: true,
      connectionTimeout: 10_000,
      greetingTimeout: 10_000,
      socketTimeout: 30_000,
    });
  }

  /** Resolves once the server has taken the message. @throws the server's refusal, or what went wrong on the way to it */
  async send(mail: Mail): Promise<void> {
    const domain = this.domain();
    await this.transport.sendMail({
      from: { name: oneLine(mail.fromName), address: `notices@${domain}` },
      to: { name: oneLine(mail.to.name), address: mail.to.address },
      ...(mail.cc === null ? {} : { cc: { name: oneLine(mail.cc.name), address: mail.cc.address } }),
      ...(mail.replyTo === null ? {} : { replyTo: mail.replyTo }),
      subject: oneLine(mail.subject),
      text: mailText(mail.content),
      html: mailHtml(mail.content),
      messageId: `<${mail.messageKey}@${domain}>`,
      ...(mail.threadKey === null
        ? {}
        : { inReplyTo: `<${mail.threadKey}@${domain}>`, references: `<${mail.threadKey}@${domain}>` }),
      // No machine shall answer a machine (RFC 3834 §5).
      headers: { 'Auto-Submitted': 'auto-generated', 'X-Auto-Response-Suppress': 'All' },
    });
  }

  close(): void {
    this.transport.close();
  }

  private domain(): string {
    return new URL(this.options.publicUrl()).hostname.replace(/^\[|\]$/g, '');
  }
}

/** Header fields are one line each. */
function oneLine(text: string): string {
  return text.replace(/\p{Cc}+/gu, ' ').trim();
}
