import { randomUUID } from 'node:crypto';
import { DataSource, In, IsNull, Not, type EntityManager } from 'typeorm';
import type { Clock } from '../platform/clock';
import { Tenancy } from '../platform/tenancy';
import { checkAnswer, readProblem, describeFault, type SlateAnswer, type SlateProblem } from '../solver';
import { withBuildLock } from './build-lock';
import { BuildWatch } from './build-watch';
import { Build } from './build.entity';
import { ChooseProposalService } from './choose-proposal.service';
import { violationSentence, withNames } from './judge-crews';
import { loadSlateRecords } from './load-slate-records';
import { Proposal } from './proposal.entity';
import { Seat } from './seat.entity';
import type { SlateBuildRequest } from './slate-build.queue';
import { SlateGame } from './slate-game.entity';
import { mapSlateProblem } from './slate-problem-mapping';
import type { SlateSolver } from './slate-solver';
import { Slate } from './slate.entity';

/** A build that was taken on: what to solve, and the version of the slate it was made from. */
interface ClaimedBuild {
  readonly build: Build;
  readonly problem: SlateProblem;
  readonly slateVersion: number;
}

/** Another worker is at the build. */
export class BuildTakenError extends Error {
  constructor(buildId: string) {
    super(`Build ${buildId} is being solved by another worker.`);
    this.name = 'BuildTakenError';
  }
}

/**
 * Carries out one build. The request may come twice, to two workers at once, or after a worker died on it: there is
 * one proposal in the end, or one fault that says why not.
 */
export class RunBuildJob {
  constructor(
    private readonly tenancy: Tenancy,
    private readonly dataSource: DataSource,
    private readonly solver: SlateSolver,
    private readonly chooseProposal: ChooseProposalService,
    private readonly clock: Clock,
  ) {}

  /**
   * @param signal aborted when the process stops; the build is then left for the next worker
   * @throws {BuildTakenError} when another worker is at it
   * @throws when the process stops; the job is tried again then
   * @throws when the solver breaks down; the build has failed then
   */
  async run(request: SlateBuildRequest, signal: AbortSignal): Promise<void> {
    const outcome = await withBuildLock(this.dataSource, request.buildId, async () => {
      await this.build(request, signal);
      await this.chooseFirst(request);
    });
    if (outcome === 'busy') throw new BuildTakenError(request.buildId);
  }

  private async build(request: SlateBuildRequest, signal: AbortSignal): Promise<void> {
    const claimed = await this.tenancy.run(request.associationId, (tx) => this.claim(tx, request));
    if (claimed === null) return;
    const { build, problem } = claimed;
    const stopping = new AbortController();
    const watch = new BuildWatch(this.tenancy, build, () => stopping.abort());
    watch.start();
    let answer: SlateAnswer;
    try {
      answer = await this.solver.solve(problem, {
        seconds: build.secondsLimit,
        seed: build.seed,
        signal: AbortSignal.any([signal, stopping.signal]),
        onProgress: (progress) => watch.note(progress),
      });
    } catch (error) {
      // Trying the same again would break down again, for ever; a process that stops is another matter.
      if (!signal.aborted) await this.breakDown(build, error);
      throw error;
    } finally {
      await watch.stop();
    }
    signal.throwIfAborted();
    const fault = faultOf(problem, answer);
    await this.tenancy.run(request.associationId, (tx) =>
      fault === null ? this.store(tx, claimed, answer) : this.fail(tx, build, fault),
    );
  }

  private async breakDown(build: Build, error: unknown): Promise<void> {
    const words = error instanceof Error ? error.message : String(error);
    await this.tenancy.run(build.associationId, (tx) =>
      this.fail(tx, build, `The solver broke down: ${words}`),
    );
  }

  /** Waiting builds and those that a worker left behind; null when there is nothing to solve, or it cannot be. */
  private async claim(tx: EntityManager, request: SlateBuildRequest): Promise<ClaimedBuild | null> {
    const { associationId, buildId: id } = request;
    const build = await tx.findOne(Build, {
      where: { associationId, id },
      lock: { mode: 'pessimistic_write' },
    });
    if (build === null || build.state === 'done' || build.state === 'failed') return null;
    const records = await loadSlateRecords(tx, associationId, build.slateId, build.weights);
    if (records === null) return null;
    const { problem, faults } = mapSlateProblem(records);
    const stops = faults.filter((fault) => fault.severity === 'stops').map((fault) => fault.message);
    const read = readProblem(problem);
    const unreadable = read.ok ? [] : read.faults.map(describeFault);
    if (stops.length + unreadable.length > 0) {
      await this.fail(tx, build, [...stops, ...unreadable].join('\n'));
      return null;
    }
    await tx.update(
      Build,
      { associationId, id },
      { state: 'solving', startedAt: build.startedAt ?? this.clock.now() },
    );
    return { build, problem, slateVersion: records.slate.version };
  }

  private async store(tx: EntityManager, claimed: ClaimedBuild, answer: SlateAnswer): Promise<void> {
    const { build, problem, slateVersion } = claimed;
    const { associationId, id: buildId, slateId, label, seed, weights } = build;
    const [, taken] = await tx.query<[unknown[], number]>(
      `update build set state = 'done', finished_at = $3 where association_id = $1 and id = $2 and state = 'solving'`,
      [associationId, buildId, this.clock.now()],
    );
    if (taken === 0) return;
    await tx.query(
      `insert into proposal (association_id, id, slate_id, build_id, label, problem, answer, status, total_cost,
                             bound, open_seats, seed, seconds, weights, slate_version, created_at)
       values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14, $15, $16)`,
      [
        associationId,
        randomUUID(),
        slateId,
        buildId,
        label,
        JSON.stringify(problem),
        JSON.stringify(answer),
        answer.status,
        answer.cost.total,
        answer.bound,
        countOpenSeats(answer),
        seed,
        answer.seconds,
        JSON.stringify(weights),
        slateVersion,
        this.clock.now(),
      ],
    );
  }

  private async fail(tx: EntityManager, build: Build, fault: string): Promise<void> {
    const { associationId, id } = build;
    await tx.update(Build, { associationId, id }, { state: 'failed', finishedAt: this.clock.now(), fault });
  }

  /**
   * Takes the proposal into a working copy that nobody has touched: there is nothing to lose in it. Any later one
   * waits until somebody chooses it.
   */
  private async chooseFirst({ associationId, buildId }: SlateBuildRequest): Promise<void> {
    const proposal = await this.tenancy.read(associationId, (tx) =>
      firstProposal(tx, associationId, buildId),
    );
    if (proposal === null) return;
    const { slateId, id: proposalId, slateVersion: expectedVersion } = proposal;
    await this.chooseProposal.choose(
      { associationId, accountId: null },
      { slateId, proposalId, expectedVersion },
    );
  }
}

/** The proposal of a build, when its slate has neither a chosen one nor anybody placed by hand. */
async function firstProposal(
  tx: EntityManager,
  associationId: string,
  buildId: string,
): Promise<Pick<Proposal, 'id' | 'slateId' | 'slateVersion'> | null> {
  const proposal = await tx.findOne(Proposal, {
    select: { id: true, slateId: true, slateVersion: true },
    where: { associationId, buildId },
  });
  if (proposal === null) return null;
  const { slateId: id } = proposal;
  const untouched = await tx.countBy(Slate, { associationId, id, chosenProposalId: IsNull() });
  const links = await tx.findBy(SlateGame, { associationId, slateId: id });
  const placed = await tx.countBy(Seat, {
    associationId,
    gameId: In(links.map(({ gameId }) => gameId)),
    locked: false,
    officialId: Not(IsNull()),
  });
  return untouched === 1 && placed === 0 ? proposal : null;
}

/** Why an answer cannot be kept: the locks are illegal, or the independent checker objects. */
function faultOf(problem: SlateProblem, answer: SlateAnswer): string | null {
  if (answer.status === 'infeasible') {
    const broken = (answer.lockViolations ?? []).map(violationSentence);
    return withNames(['The locked seats cannot be kept legally.', ...broken].join('\n'), problem);
  }
  const report = checkAnswer(problem, answer);
  if (report.ok) return null;
  const objections = [
    ...report.faults.map(describeFault),
    ...report.violations.map(violationSentence),
    ...report.mismatches,
  ];
  return withNames(['The answer did not pass the independent check.', ...objections].join('\n'), problem);
}

function countOpenSeats(answer: SlateAnswer): number {
  return answer.assignments.reduce(
    (open, { chief, umpire }) => open + (chief === null ? 1 : 0) + (umpire === null ? 1 : 0),
    0,
  );
}
