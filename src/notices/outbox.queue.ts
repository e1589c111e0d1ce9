import { z } from 'zod';
import { defineQueue } from '../platform/queues';

/** Asks a worker to send what is due in one association's outbox. One waiting request is as good as many. */
export const outboxQueue = defineQueue({
  name: 'outbox',
  payload: z.strictObject({ associationId: z.uuid() }),
  policy: 'short',
});
