import { localParts } from '../platform/local-time';
import { demoAssociation } from '../demo/demo-association';
import { slateServices } from '../slates/slate-services';
import { readSlateSummaries, type SlateSummary } from '../slates/slate-summary.query';
import { readSlateView } from '../slates/slate-view.query';
import { buildFromTerminal } from './build-from-terminal';
import type { OpenService } from './open-service';
import { figuresText } from './slate-text';

export interface WeekendOptions {
  /** Time to spend on the crews; by the number of games unless stated. */
  readonly seconds?: number;
  /** Told each step. */
  readonly say: (text: string) => void;
  /** Given what came of it. */
  readonly answer: (text: string) => void;
}

/**
 * Builds and publishes the next weekend of the demo, by the same road as everybody's, unless it was published before; then says
 * how good it is.
 */
export async function publishComingWeekend(
  service: OpenService,
  associationId: string,
  options: WeekendOptions,
): Promise<void> {
  const { say, answer } = options;
  const slate = await nextSlate(service, associationId);
  if (slate === null) {
    say('Slate: no weekend lies ahead; bring in games and open a slate, or start with a fresh DATA_DIR.');
    return;
  }
  if (slate.published === null) await buildAndPublish(service, associationId, slate, options);
  else say(`Slate: "${slate.name}" was published before`);
  await service.tenancy.read(associationId, async (tx) => {
    const view = await readSlateView(tx, associationId, slate.id);
    if (view === null) return;
    answer(`\n${slate.name}`);
    answer(figuresText(view));
    const { chosen } = view.summary;
    if (chosen !== null) answer(`Built in ${chosen.seconds.toFixed(1)} seconds`);
  });
}

async function nextSlate(service: OpenService, associationId: string): Promise<SlateSummary | null> {
  const summaries = await service.tenancy.read(associationId, (tx) => readSlateSummaries(tx, associationId));
  const today = localParts(service.clock.now(), demoAssociation.timeZone).date;
  return summaries.filter(({ toDate }) => toDate >= today).at(-1) ?? null;
}

async function buildAndPublish(
  service: OpenService,
  associationId: string,
  slate: SlateSummary,
  { seconds, say }: WeekendOptions,
): Promise<void> {
  const actor = { associationId, accountId: null };
  const services = slateServices(service);
  if (slate.chosen === null) {
    say(`Slate: building the crews of "${slate.name}" (${slate.games} games)`);
    const request = { slateId: slate.id, ...(seconds === undefined ? {} : { seconds }) };
    const outcome = await services.requestBuild.request(actor, request);
    if (outcome.kind !== 'requested') throw new Error(`The build was refused: ${JSON.stringify(outcome)}`);
    const build = await buildFromTerminal(services, actor, outcome.buildId);
    if (build.proposalId === null) throw new Error(`The build failed: ${build.fault ?? 'no reason given'}`);
    const chosen = await services.chooseProposal.choose(actor, {
      slateId: slate.id,
      proposalId: build.proposalId,
    });
    if (chosen.kind !== 'chosen') throw new Error(`The crews could not be taken: ${JSON.stringify(chosen)}`);
  }
  const published = await services.publishSlate.publish(actor, {
    slateId: slate.id,
    idempotencyKey: `demo ${slate.id}`,
  });
  if (published.kind !== 'published') throw new Error(`Publishing was refused: ${JSON.stringify(published)}`);
  say(`Slate: published, ${published.changes.added} seats offered`);
}
