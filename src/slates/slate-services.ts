import type { DataSource } from 'typeorm';
import { AuditTrail } from '../access/audit-trail';
import type { Clock } from '../platform/clock';
import type { Jobs } from '../platform/jobs';
import type { Tenancy } from '../platform/tenancy';
import { BuildsService } from './builds.service';
import { ChooseProposalService } from './choose-proposal.service';
import { CreateSlateService } from './create-slate.service';
import { PublishSlateService } from './publish-slate.service';
import { ReplyService } from './reply.service';
import { RequestBuildService } from './request-build.service';
import { RunBuildJob } from './run-build.job';
import type { SlateSolver } from './slate-solver';
import { SlateWorkers } from './slate-workers';
import { ThreadSolver } from './thread-solver';

/** What the slates stand on. */
export interface SlateGround {
  readonly dataSource: DataSource;
  readonly tenancy: Tenancy;
  readonly jobs: Jobs;
  readonly clock: Clock;
  /** A thread of its own unless stated. */
  readonly solver?: SlateSolver;
}

/** Every service of a slate's life, for commands, workers and tests; pages get theirs from `SlatesModule`. */
export function slateServices(ground: SlateGround) {
  const { dataSource, tenancy, jobs, clock, solver = new ThreadSolver() } = ground;
  const audit = new AuditTrail(clock);
  const chooseProposal = new ChooseProposalService(tenancy, audit);
  const runBuild = new RunBuildJob(tenancy, dataSource, solver, chooseProposal, clock);
  return {
    createSlate: new CreateSlateService(tenancy, audit, clock),
    requestBuild: new RequestBuildService(tenancy, jobs, audit, clock),
    builds: new BuildsService(tenancy, clock),
    chooseProposal,
    publishSlate: new PublishSlateService(tenancy, audit, clock),
    reply: new ReplyService(tenancy, audit, clock),
    runBuild,
    /** Start these in every process that is to solve. */
    workers: new SlateWorkers(dataSource, tenancy, jobs, runBuild),
  };
}

export type SlateServices = ReturnType<typeof slateServices>;
