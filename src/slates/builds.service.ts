import { Inject, Injectable } from '@nestjs/common';
import { clockToken, type Clock } from '../platform/clock';
import { Tenancy } from '../platform/tenancy';
import type { BuildProgress } from './build-progress';
import { Build } from './build.entity';
import { Proposal } from './proposal.entity';
import type { SlateActor } from './slate-actor';

/** A build as a page shows it while it runs and afterwards. */
export interface WatchedBuild {
  readonly id: string;
  readonly slateId: string;
  readonly label: string;
  readonly state: Build['state'];
  readonly seed: number;
  readonly secondsLimit: number;
  /** The latest figures, at most a second old while it runs; null before the first. */
  readonly progress: BuildProgress | null;
  readonly isStopRequested: boolean;
  readonly requestedAt: Date;
  readonly startedAt: Date | null;
  readonly finishedAt: Date | null;
  /** Why it failed, a sentence a line. */
  readonly fault: string | null;
  /** The proposal that came of it. */
  readonly proposalId: string | null;
}

/** Builds as others may watch and stop them. */
@Injectable()
export class BuildsService {
  constructor(
    private readonly tenancy: Tenancy,
    @Inject(clockToken) private readonly clock: Clock,
  ) {}

  get(associationId: string, buildId: string): Promise<WatchedBuild | null> {
    return this.tenancy.read(associationId, async (tx) => {
      const build = await tx.findOneBy(Build, { associationId, id: buildId });
      if (build === null) return null;
      const proposal = await tx.findOne(Proposal, {
        select: { id: true },
        where: { associationId, buildId },
      });
      return watched(build, proposal?.id ?? null);
    });
  }

  /** Latest first. */
  ofSlate(associationId: string, slateId: string): Promise<WatchedBuild[]> {
    return this.tenancy.read(associationId, async (tx) => {
      const builds = await tx.find(Build, {
        where: { associationId, slateId },
        order: { requestedAt: 'desc' },
      });
      const proposals = await tx.find(Proposal, {
        select: { id: true, buildId: true },
        where: { associationId, slateId },
      });
      const proposalByBuild = new Map(proposals.map(({ id, buildId }) => [buildId, id]));
      return builds.map((build) => watched(build, proposalByBuild.get(build.id) ?? null));
    });
  }

  /**
   * Asks a running build to end soon and keep its best; one that waits will stop as soon as it has a first slate.
   *
   * @returns false when there is nothing to stop
   */
  stop(actor: SlateActor, buildId: string): Promise<boolean> {
    return this.tenancy.run(actor.associationId, async (tx) => {
      const [, stopped] = await tx.query<[unknown[], number]>(
        `update build set stop_requested_at = coalesce(stop_requested_at, $3)
          where association_id = $1 and id = $2 and state in ('waiting', 'solving')`,
        [actor.associationId, buildId, this.clock.now()],
      );
      return stopped > 0;
    });
  }
}

function watched(build: Build, proposalId: string | null): WatchedBuild {
  return {
    id: build.id,
    slateId: build.slateId,
    label: build.label,
    state: build.state,
    seed: build.seed,
    secondsLimit: build.secondsLimit,
    progress: build.progress,
    isStopRequested: build.stopRequestedAt !== null,
    requestedAt: build.requestedAt,
    startedAt: build.startedAt,
    finishedAt: build.finishedAt,
    fault: build.fault,
    proposalId,
  };
}
