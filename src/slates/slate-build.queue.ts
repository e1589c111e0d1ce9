import { z } from 'zod';
import { defineQueue } from '../platform/queues';

/** The longest that a build may be asked to solve. */
export const buildSecondsMax = 3600;

/**
 * Asks a worker to solve a build. One waiting request for a build is as good as many; should two workers get one each, the
 * second finds the build taken.
 */
export const slateBuildQueue = defineQueue({
  name: 'slate-build',
  payload: z.strictObject({
    associationId: z.uuid(),
    buildId: z.uuid(),
  }),
  policy: 'short',
  retryLimit: 3,
  retryDelaySeconds: 2,
  expireInSeconds: 2 * buildSecondsMax,
});

export type SlateBuildRequest = z.infer<typeof slateBuildQueue.payload>;
