import { setTimeout as pause } from 'node:timers/promises';
import type { SlateActor } from '../slates/slate-actor';
import type { WatchedBuild } from '../slates/builds.service';
import { BuildTakenError } from '../slates/run-build.job';
import type { SlateServices } from '../slates/slate-services';
import { ProgressLine } from './progress-line';

const lookEveryMs = 250;

/**
 * Carries out a queued build in this process, or watches it where a worker was quicker, and shows how it stands
 * on standard error. Ctrl-C asks it to end soon and keep its best.
 */
export async function buildFromTerminal(
  services: Pick<SlateServices, 'builds' | 'runBuild'>,
  actor: SlateActor,
  buildId: string,
): Promise<WatchedBuild> {
  const { associationId } = actor;
  const line = new ProgressLine(process.stderr, false);
  const stop = () => void services.builds.stop(actor, buildId);
  process.once('SIGINT', stop);
  process.once('SIGTERM', stop);
  try {
    // A worker may have the build; then there is nothing to do here but to watch.
    const own = services.runBuild
      .run({ associationId, buildId }, new AbortController().signal)
      .then(() => null)
      .catch((error: unknown) => (error instanceof Error ? error : new Error(String(error))));
    let fault: Error | null | undefined;
    void own.then((outcome) => (fault = outcome));
    for (;;) {
      const build = await services.builds.get(associationId, buildId);
      if (build === null) throw new Error(`Build ${buildId} is gone.`);
      const { state, progress } = build;
      if (state === 'done' || state === 'failed') {
        await own;
        if (process.stderr.isTTY) process.stderr.write('\r\u001b[K');
        return build;
      }
      if (fault !== undefined && fault !== null && !(fault instanceof BuildTakenError)) throw fault;
      if (progress !== null) line.show({ ...progress, cost: progress.totalCost });
      await pause(lookEveryMs);
    }
  } finally {
    process.off('SIGINT', stop);
    process.off('SIGTERM', stop);
  }
}
