import { OutboxWorkers } from '../notices/outbox-workers';
import { SmtpMailer } from '../notices/smtp-mailer';
import { slateServices } from '../slates/slate-services';
import type { OpenService } from './open-service';

/** The background work of one process. */
export interface RunningWorkers {
  /** What is worked on here, for saying so. */
  readonly kinds: readonly string[];
  /** Ends the looking after; closing the service then lets go of the jobs that run. */
  stop(): Promise<void>;
}

/**
 * Takes builds from the queue and, where a mail server is configured, sends what waits in the outboxes. For `work`,
 * and for `serve` where one process does everything.
 *
 * @param publicUrl address under which people reach the service, without a trailing slash
 */
export async function startWorkers(service: OpenService, publicUrl: () => string): Promise<RunningWorkers> {
  const { tenancy, jobs, clock, log, configuration } = service;
  const slates = slateServices(service).workers;
  await slates.start();
  const { smtpUrl } = configuration;
  if (smtpUrl === null) return { kinds: ['builds'], stop: () => slates.stop() };
  const mailer = new SmtpMailer({ smtpUrl, publicUrl });
  const outbox = new OutboxWorkers(jobs, { tenancy, clock, log, mailer, publicUrl });
  await outbox.start();
  return {
    kinds: ['builds', 'mail'],
    stop: async () => {
      await slates.stop();
      await outbox.stop();
    },
  };
}
