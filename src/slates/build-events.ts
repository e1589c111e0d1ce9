import { setTimeout as pause } from 'node:timers/promises';
import type { StreamedEvent } from '../web/http/event-streams';
import type { WatchedBuild } from './builds.service';

const lookEveryMs = 500;

/**
 * Tells how a build goes on until it is over, from the database: the worker that solves it may run on another machine.
 *
 * @param options.figures what a page shows of it
 */
export async function* buildEvents(options: {
  readonly read: () => Promise<WatchedBuild | null>;
  readonly figures: (build: WatchedBuild) => object;
  readonly signal: AbortSignal;
}): AsyncGenerator<StreamedEvent> {
  while (!options.signal.aborted) {
    const build = await options.read();
    if (build === null || build.state === 'done' || build.state === 'failed') {
      yield { name: 'finished', data: { state: build?.state ?? 'failed' } };
      return;
    }
    yield { name: 'progress', data: options.figures(build) };
    // An aborted wait only means that nobody listens any more.
    await pause(lookEveryMs, undefined, { signal: options.signal }).catch(() => undefined);
  }
}
