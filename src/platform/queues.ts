import type { ZodType } from 'zod';

/** One kind of background work: its name, the form of its payload, and how often it is tried. */
export interface Queue<Payload extends object> {
  /** Letters, digits, hyphens; permanent, since waiting jobs are filed under it. */
  readonly name: string;
  readonly payload: ZodType<Payload>;
  /**
   * What `singletonKey` means here. `standard`: nothing. `short`: one waiting job a key. `singleton`: one running job a key.
   * `stately`: one job a key in each state.
   */
  readonly policy: 'standard' | 'short' | 'singleton' | 'stately';
  /** Tries after the first one that failed. */
  readonly retryLimit: number;
  /** Seconds before the first further try; doubled each time. */
  readonly retryDelaySeconds: number;
  /** A job that runs longer counts as failed; below 24 hours. */
  readonly expireInSeconds: number;
}

/** Any queue, where the payload does not matter. */
export type AnyQueue = Omit<Queue<object>, 'payload'>;

/** States a queue; unless said otherwise: `standard`, 2 further tries from 5 seconds on, 15 minutes to run. */
export function defineQueue<Payload extends object>(
  queue: Pick<Queue<Payload>, 'name' | 'payload'> & Partial<Queue<Payload>>,
): Queue<Payload> {
  return { policy: 'standard', retryLimit: 2, retryDelaySeconds: 5, expireInSeconds: 15 * 60, ...queue };
}
