import { Inject, Injectable } from '@nestjs/common';
import { randomUUID } from 'node:crypto';
import { AuditTrail } from '../access/audit-trail';
import { Association } from '../access/association.entity';
import type { SlateWeights } from '../access/association-policy';
import { clockToken, type Clock } from '../platform/clock';
import { Jobs } from '../platform/jobs';
import { Tenancy } from '../platform/tenancy';
import { defaultSeconds } from '../solver';
import { Build } from './build.entity';
import { lockSlate } from './lock-slate';
import { refreshSlate } from './refresh-slate';
import type { SlateActor } from './slate-actor';
import { buildSecondsMax, slateBuildQueue } from './slate-build.queue';
import { SlateGame } from './slate-game.entity';

export interface BuildRequest {
  readonly slateId: string;
  /** What the proposal is called in lists; counted up unless stated. */
  readonly label?: string;
  /** Any whole number from 0 to 2³¹ − 1; 1 unless stated. */
  readonly seed?: number;
  /** Time to solve, above 0 and at most an hour; by the number of games unless stated. */
  readonly seconds?: number;
  /** Other emphases than the slate's or association's. */
  readonly weights?: SlateWeights;
}

export type RequestBuildOutcome =
  | { readonly kind: 'requested'; readonly buildId: string }
  | { readonly kind: 'refused'; readonly reasons: readonly string[] }
  | { readonly kind: 'not-found' };

/** Asks for a slate to be built; a worker takes it from there. */
@Injectable()
export class RequestBuildService {
  constructor(
    private readonly tenancy: Tenancy,
    private readonly jobs: Jobs,
    private readonly audit: AuditTrail,
    @Inject(clockToken) private readonly clock: Clock,
  ) {}

  /** Brings the slate's games up to date and queues the build; both happen, or neither. */
  async request(actor: SlateActor, request: BuildRequest): Promise<RequestBuildOutcome> {
    const { associationId, accountId } = actor;
    const { slateId, seed = 1, seconds } = request;
    const reasons = faultsOf(seed, seconds);
    if (reasons.length > 0) return { kind: 'refused', reasons };
    return this.tenancy.run(associationId, async (tx): Promise<RequestBuildOutcome> => {
      const slate = await lockSlate(tx, associationId, slateId);
      if (slate === null) return { kind: 'not-found' };
      await refreshSlate(tx, slate);
      const association = await tx.findOneByOrFail(Association, { id: associationId });
      const games = await tx.countBy(SlateGame, { associationId, slateId });
      const builds = await tx.countBy(Build, { associationId, slateId });
      const buildId = randomUUID();
      const label = request.label?.trim() ?? '';
      const build = {
        associationId,
        id: buildId,
        slateId,
        label: label === '' ? `Build ${builds + 1}` : label,
        state: 'waiting' as const,
        seed,
        secondsLimit: seconds ?? defaultSeconds(games),
        weights: request.weights ?? slate.weights ?? association.weights,
        slateVersion: slate.version,
        progress: null,
        stopRequestedAt: null,
        requestedBy: accountId,
        requestedAt: this.clock.now(),
        startedAt: null,
        finishedAt: null,
        fault: null,
      };
      await tx.insert(Build, build);
      await this.jobs.sendInTransaction(
        tx,
        slateBuildQueue,
        { associationId, buildId },
        { singletonKey: buildId },
      );
      await this.audit.write(tx, {
        ...actor,
        action: 'build.requested',
        objectKind: 'slate',
        objectId: slateId,
        after: { buildId, label: build.label, seed, seconds: build.secondsLimit },
      });
      return { kind: 'requested', buildId };
    });
  }
}

function faultsOf(seed: number, seconds: number | undefined): string[] {
  const isSeed = Number.isInteger(seed) && seed >= 0 && seed < 2 ** 31;
  const isTime = seconds === undefined || (seconds > 0 && seconds <= buildSecondsMax);
  return [
    ...(isSeed ? [] : [`The seed must be a whole number from 0 to ${2 ** 31 - 1}.`]),
    ...(isTime ? [] : [`The time must be above 0 and at most ${buildSecondsMax} seconds.`]),
  ];
}
