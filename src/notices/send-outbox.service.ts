import type { Clock } from '../platform/clock';
import type { Log } from '../platform/log';
import type { Tenancy } from '../platform/tenancy';
import { claimDueMessages, settleMessage, type ClaimedMessage, type SendOutcome } from './outbox';
import { prepareNotice } from './prepare-notice';
import { attemptsMax, isFinalRefusal, nextTry } from './retry';
import type { SmtpMailer } from './smtp-mailer';

/** Far longer than handing one message to a mail server may take. */
const leaseMs = 5 * 60_000;

export type SendReport = Readonly<Record<SendOutcome['kind'], number>>;

export interface OutboxGround {
  readonly tenancy: Tenancy;
  readonly clock: Clock;
  readonly log: Log;
  readonly mailer: Pick<SmtpMailer, 'send'>;
  /** Address of the service, without a trailing slash. */
  readonly publicUrl: () => string;
}

/**
 * Sends what is due in an outbox: at least once, since a worker may die between the mail server's yes and our
 * note of it; the second copy then has the same Message-ID. Nothing is sent inside a transaction.
 */
export class SendOutboxService {
  constructor(private readonly ground: OutboxGround) {}

  /** @param signal stops between two messages */
  async sendDue(associationId: string, signal?: AbortSignal): Promise<SendReport> {
    const report = { sent: 0, superseded: 0, retry: 0, dead: 0 };
    while (signal?.aborted !== true) {
      const message = await this.claimOne(associationId);
      if (message === null) break;
      const outcome = await this.send(message);
      const { tenancy, clock } = this.ground;
      const isOurs = await tenancy.run(associationId, (tx) =>
        settleMessage(tx, message, outcome, clock.now()),
      );
      if (isOurs) report[outcome.kind] += 1;
    }
    return report;
  }

  /** One at a time: a worker that stops holds no other message back. */
  private async claimOne(associationId: string): Promise<ClaimedMessage | null> {
    const now = this.ground.clock.now();
    const leasedUntil = new Date(now.getTime() + leaseMs);
    const [message] = await this.ground.tenancy.run(associationId, (tx) =>
      claimDueMessages(tx, { associationId, now, leasedUntil, limit: 1 }),
    );
    return message ?? null;
  }

  private async send(message: ClaimedMessage): Promise<SendOutcome> {
    const { tenancy, clock, log, mailer, publicUrl } = this.ground;
    const now = clock.now();
    try {
      const prepared = await tenancy.read(message.associationId, (tx) =>
        prepareNotice(tx, message, { now, publicUrl: publicUrl() }),
      );
      if (prepared.kind === 'superseded') return { kind: 'superseded' };
      if (prepared.kind === 'undeliverable') return { kind: 'dead', fault: prepared.fault };
      await mailer.send(prepared.mail);
      return { kind: 'sent' };
    } catch (error) {
      const fault = error instanceof Error ? error.message : String(error);
      const isFinal = isFinalRefusal(error) || message.attempts >= attemptsMax;
      log.warn(
        { outboxMessageId: message.id, attempts: message.attempts, isFinal, err: error },
        'mail not sent',
      );
      return isFinal ? { kind: 'dead', fault } : { kind: 'retry', at: nextTry(now, message.attempts), fault };
    }
  }
}
