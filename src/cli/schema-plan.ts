import { migrations } from '../../migrations';
import { outboxQueue } from '../notices/outbox.queue';
import type { SchemaPlan } from '../platform/migrate';
import { slateBuildQueue } from '../slates/slate-build.queue';

/** The schema that this version of the code expects: every migration and every job queue of the features. */
export const schemaPlan: SchemaPlan = { migrations, queues: [slateBuildQueue, outboxQueue] };
