import type { EntityManager } from 'typeorm';
import type { Tenancy } from '../platform/tenancy';
import type { SolveProgress } from '../solver';

const writeEveryMs = 1000;

/** Looks after one running build: writes how it stands once a second at most, and hears whether it should stop. */
export class BuildWatch {
  private latest: SolveProgress | null = null;
  private timer: NodeJS.Timeout | null = null;
  private writing: Promise<void> = Promise.resolve();

  constructor(
    private readonly tenancy: Tenancy,
    private readonly build: { readonly associationId: string; readonly id: string },
    private readonly onStopRequested: () => void,
  ) {}

  start(): void {
    this.timer = setInterval(() => {
      this.writing = this.writing.then(() => this.write());
    }, writeEveryMs);
  }

  note(progress: SolveProgress): void {
    this.latest = progress;
  }

  /** Writes the last figures. */
  async stop(): Promise<void> {
    if (this.timer !== null) clearInterval(this.timer);
    await this.writing.then(() => this.write());
  }

  private async write(): Promise<void> {
    try {
      const isStopRequested = await this.tenancy.run(this.build.associationId, (tx) => this.exchange(tx));
      if (isStopRequested) this.onStopRequested();
    } catch {
      // Progress is a courtesy: the search goes on, and storing its answer tells whether the database is back.
    }
  }

  private async exchange(tx: EntityManager): Promise<boolean> {
    const { associationId, id } = this.build;
    const progress = this.latest;
    const [rows] = await tx.query<[{ is_stop_requested: boolean }[], number]>(
      `update build set progress = coalesce($3::jsonb, progress)
        where association_id = $1 and id = $2 and state = 'solving'
       returning stop_requested_at is not null as is_stop_requested`,
      [
        associationId,
        id,
        progress === null
          ? null
          : JSON.stringify({
              seconds: progress.seconds,
              totalCost: progress.cost,
              bound: progress.bound,
              openSeats: progress.openSeats,
            }),
      ],
    );
    return rows[0]?.is_stop_requested ?? false;
  }
}
