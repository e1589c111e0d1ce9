import { DataSource, In } from 'typeorm';
import { Jobs } from '../platform/jobs';
import { Tenancy } from '../platform/tenancy';
import { withBuildLock } from './build-lock';
import { Build } from './build.entity';
import { RunBuildJob } from './run-build.job';
import { slateBuildQueue } from './slate-build.queue';

const lookAfterLeftBuildsMs = 30_000;

/** Takes builds from the queue in this process, and sees to those that a dead worker left behind. */
export class SlateWorkers {
  private timer: NodeJS.Timeout | null = null;
  private looking: Promise<unknown> = Promise.resolve();

  constructor(
    private readonly dataSource: DataSource,
    private readonly tenancy: Tenancy,
    private readonly jobs: Jobs,
    private readonly runBuild: RunBuildJob,
  ) {}

  /** Works until the jobs are stopped; `stop` first. */
  async start(): Promise<void> {
    await this.jobs.work(slateBuildQueue, ({ data, signal }) => this.runBuild.run(data, signal));
    await this.requeueLeftBuilds();
    this.timer = setInterval(() => {
      // The next look makes good what this one could not.
      this.looking = this.requeueLeftBuilds().catch(() => undefined);
    }, lookAfterLeftBuildsMs);
    this.timer.unref();
  }

  async stop(): Promise<void> {
    if (this.timer !== null) clearInterval(this.timer);
    await this.looking;
  }

  /**
   * Asks again for every unfinished build that nobody is at. The queue itself would wait for the job's time to run out, which is
   * as long as the longest build. Asking once too often does no harm.
   *
   * @returns how many were asked for again
   */
  async requeueLeftBuilds(): Promise<number> {
    const rows = await this.dataSource.query<{ id: string }[]>('select association_ids() as id');
    let requeued = 0;
    for (const { id: associationId } of rows) {
      const builds = await this.tenancy.read(associationId, (tx) =>
        tx.findBy(Build, { associationId, state: In(['waiting', 'solving']) }),
      );
      for (const { id: buildId } of builds) {
        const isLeft =
          (await withBuildLock(this.dataSource, buildId, async () => 'free' as const)) === 'free';
        if (!isLeft) continue;
        const data = { associationId, buildId };
        if ((await this.jobs.send(slateBuildQueue, data, { singletonKey: buildId })) !== null) requeued += 1;
      }
    }
    return requeued;
  }
}
