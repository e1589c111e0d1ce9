import PgBoss from 'pg-boss';
import type { DataSource, EntityManager } from 'typeorm';
import { poolOf } from './database';
import type { Log } from './log';
import type { Queue } from './queues';

export interface SendOptions {
  /** What makes two jobs the same, by the queue's policy. */
  readonly singletonKey?: string;
  /** Not before this instant; at once unless stated. */
  readonly startAfter?: Date;
}

/** One job as its handler sees it. */
export interface Job<Payload> {
  readonly id: string;
  readonly data: Payload;
  /**
   * Aborted when the process stops, and when 19/20 of the queue's `expireInSeconds` have passed: the last twentieth is for ending in
   * good order, after that the job has failed.
   */
  readonly signal: AbortSignal;
}

/**
 * Background work, kept in the database by pg-boss. Sending and working need no rights beyond the application role's; the queues
 * are created when migrating.
 */
export class Jobs {
  private readonly boss: PgBoss;
  private readonly stopping = new AbortController();
  private readonly workerIds = new Map<string, string[]>();
  private readonly running = new Set<Promise<unknown>>();

  private constructor(
    dataSource: DataSource,
    private readonly log: Log,
  ) {
    const pool = poolOf(dataSource);
    const executeSql = (text: string, values: unknown[]) => this.track(pool.query(text, values));
    this.boss = new PgBoss({ db: { executeSql }, schema: 'pgboss', migrate: false, schedule: false });
    this.boss.on('error', (error) => this.log.error({ err: error }, 'job queue'));
  }

  /** @throws when the queue's tables are missing or of another version; migrate first */
  static async start(dataSource: DataSource, log: Log): Promise<Jobs> {
    const jobs = new Jobs(dataSource, log);
    await jobs.boss.start();
    return jobs;
  }

  /** @returns the job's id, or `null` when an equal one is there already */
  async send<P extends object>(queue: Queue<P>, data: P, options: SendOptions = {}): Promise<string | null> {
    const id = await this.boss.send(queue.name, queue.payload.parse(data), { ...options });
    // A worker in this process need not wait for its next look at the table.
    if (id !== null && options.startAfter === undefined) {
      for (const worker of this.workerIds.get(queue.name) ?? []) this.boss.notifyWorker(worker);
    }
    return id;
  }

  /** As `send`, and the job exists exactly when the transaction is committed. */
  async sendInTransaction<P extends object>(
    tx: EntityManager,
    queue: Queue<P>,
    data: P,
    options: SendOptions = {},
  ): Promise<string | null> {
    const executeSql = async (text: string, values: unknown[]) => ({
      rows: await tx.query<{ id: string }[]>(text, values),
    });
    return this.boss.send(queue.name, queue.payload.parse(data), { ...options, db: { executeSql } });
  }

  /**
   * Takes jobs of a queue from now on. A handler that throws fails the job, which is then tried again as its queue says.
   *
   * @param options.concurrency jobs at once in this process, 1 unless stated
   * @param options.pollingSeconds between looks at an empty queue, from 0.5; 1 unless stated
   */
  async work<P extends object>(
    queue: Queue<P>,
    handler: (job: Job<P>) => Promise<void>,
    options: { concurrency?: number; pollingSeconds?: number } = {},
  ): Promise<void> {
    const workers = this.workerIds.get(queue.name) ?? [];
    this.workerIds.set(queue.name, workers);
    for (let n = 0; n < (options.concurrency ?? 1); n += 1) {
      const worker = await this.boss.work<P>(
        queue.name,
        { pollingIntervalSeconds: options.pollingSeconds ?? 1 },
        async ([job]) => {
          if (job !== undefined) await this.track(this.handle(queue, job, handler));
        },
      );
      workers.push(worker);
    }
  }

  /**
   * Takes no more jobs, aborts the signal of those that run, and waits for them.
   *
   * @param options.timeoutMs jobs that still run then are given back to be tried again; 30 seconds unless stated
   */
  async stop(options: { timeoutMs?: number } = {}): Promise<void> {
    this.stopping.abort(new Error('The process is stopping.'));
    await this.boss.stop({ timeout: options.timeoutMs ?? 30_000 });
    // The queue notes the end of a job without waiting for it; the connections must not close before.
    await Promise.allSettled(this.running);
  }

  private async handle<P extends object>(
    queue: Queue<P>,
    job: PgBoss.Job<P>,
    handler: (job: Job<P>) => Promise<void>,
  ): Promise<void> {
    const aborting = new AbortController();
    const stop = () => aborting.abort(this.stopping.signal.reason);
    this.stopping.signal.addEventListener('abort', stop);
    const seconds = Number(job.expireInSeconds);
    const expiry = setTimeout(
      () => aborting.abort(new Error(`The job has nearly used up its ${seconds} s.`)),
      seconds * 950,
    );
    try {
      await handler({ id: job.id, data: queue.payload.parse(job.data), signal: aborting.signal });
    } catch (error) {
      this.log.warn({ err: error, queue: queue.name, jobId: job.id }, 'job failed');
      throw error;
    } finally {
      clearTimeout(expiry);
      this.stopping.signal.removeEventListener('abort', stop);
    }
  }

  private track<T>(work: Promise<T>): Promise<T> {
    this.running.add(work);
    const forget = () => this.running.delete(work);
    work.then(forget, forget);
    return work;
  }
}
