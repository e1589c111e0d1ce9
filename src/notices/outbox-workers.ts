import type { Jobs } from '../platform/jobs';
import { outboxQueue } from './outbox.queue';
import { SendOutboxService, type OutboxGround } from './send-outbox.service';

const lookEveryMs = 15_000;

/** Empties outboxes in this process: on request through the queue, and by looking at every association now and then. */
export class OutboxWorkers {
  private timer: NodeJS.Timeout | null = null;
  private looking: Promise<unknown> = Promise.resolve();
  private readonly outbox: SendOutboxService;

  constructor(
    private readonly jobs: Jobs,
    private readonly ground: OutboxGround,
  ) {
    this.outbox = new SendOutboxService(ground);
  }

  /** Works until the jobs are stopped; `stop` first. */
  async start(): Promise<void> {
    await this.jobs.work(outboxQueue, async ({ data, signal }) => {
      await this.outbox.sendDue(data.associationId, signal);
    });
    await this.look();
    this.timer = setInterval(() => {
      this.looking = this.look().catch((error: unknown) =>
        this.ground.log.warn({ err: error }, 'the outboxes could not be looked at'),
      );
    }, lookEveryMs);
    this.timer.unref();
  }

  async stop(): Promise<void> {
    if (this.timer !== null) clearInterval(this.timer);
    await this.looking;
  }

  /**
   * Requests sending for every association where something is due. Publishing writes messages without knowing who sends
   * them, and a message to be tried again becomes due without anybody asking.
   *
   * @returns how many associations that was
   */
  async look(): Promise<number> {
    const { tenancy, clock } = this.ground;
    const rows = await tenancy.readWith({}, (tx) =>
      tx.query<{ id: string }[]>('select association_ids() as id'),
    );
    let due = 0;
    for (const { id: associationId } of rows) {
      const found = await tenancy.read(associationId, (tx) =>
        tx.query<unknown[]>(
          `select 1 from outbox_message
            where association_id = $1 and sent_at is null and superseded_at is null and dead_at is null
              and next_try_at <= $2 and (leased_until is null or leased_until <= $2)
            limit 1`,
          [associationId, clock.now()],
        ),
      );
      if (found.length === 0) continue;
      due += 1;
      await this.jobs.send(outboxQueue, { associationId }, { singletonKey: associationId });
    }
    return due;
  }
}
