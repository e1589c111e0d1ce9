import { randomUUID } from 'node:crypto';
import type { DataSource } from 'typeorm';
import { Association } from '../access/association.entity';
import { describeCsvFault } from '../platform/csv/csv-fault';
import type { Clock } from '../platform/clock';
import { localParts } from '../platform/local-time';
import type { Tenancy } from '../platform/tenancy';
import { ImportsService } from '../games/imports/imports.service';
import { crewsKind } from '../slates/import-crews';
import { addDemoAccounts } from './demo-accounts';
import { demoAssociation, demoStaff } from './demo-association';
import { readDemoFiles } from './demo-files';
import { addDemoSlates, type DemoSlate } from './demo-slates';

export interface DemoGround {
  readonly dataSource: DataSource;
  readonly tenancy: Tenancy;
  readonly clock: Clock;
}

export type DemoOutcome =
  | { readonly kind: 'present'; readonly associationId: string }
  | {
      readonly kind: 'loaded';
      readonly associationId: string;
      readonly assignorEmail: string;
      readonly objects: Readonly<Record<string, number>>;
      readonly pastSlates: readonly DemoSlate[];
      readonly comingSlates: readonly DemoSlate[];
    };

export interface DemoOptions {
  /** ISO 8601 date that counts as today; the day it is in the demo's zone unless stated. */
  readonly today?: string;
  readonly onProgress?: (step: string) => void;
}

/**
 * Loads the Marram Coast association from `seed/`, through the same importers as everybody's lists, in one transaction. Does
 * nothing where it is there already.
 */
export async function loadDemo(ground: DemoGround, options: DemoOptions = {}): Promise<DemoOutcome> {
  const { tenancy } = ground;
  const present = await findAssociation(ground, demoAssociation.slug);
  if (present !== null) return { kind: 'present', associationId: present };
  const moment = ground.clock.now();
  const day = localParts(moment, demoAssociation.timeZone).date;
  const today = options.today ?? day;
  const now = today === day ? moment : new Date(`${today}T12:00:00Z`);
  const say = options.onProgress ?? (() => undefined);

  const associationId = randomUUID();
  const imports = new ImportsService(tenancy, { now: () => now });
  imports.register(crewsKind);
  const files = await readDemoFiles(today);
  return tenancy.run(associationId, async (tx): Promise<DemoOutcome> => {
    say(`opening ${demoAssociation.name}`);
    await tx.insert(Association, {
      ...demoAssociation,
      id: associationId,
      version: 1,
      createdAt: now,
      updatedAt: now,
    });
    say(`importing ${files.length} lists`);
    const { outcome, plan } = await imports.applyIn(tx, associationId, files);
    if (outcome === 'refused')
      throw new Error(['The demo has faults:', ...plan.faults.map(describeCsvFault)].join('\n'));
    const objects = Object.fromEntries(plan.kinds.map(({ kind, added }) => [kind, added.length]));
    const { assignorAccountId, accounts } = await addDemoAccounts(tx, associationId, now);
    say(`${accounts} accounts`);
    const { past, coming } = await addDemoSlates(tx, { associationId, assignorAccountId, today, now });
    say(`${past.length} weekends played, ${coming.length} to come`);
    const assignorEmail = demoStaff.find(({ roles }) => roles.includes('assignor'))?.email ?? '';
    return { kind: 'loaded', associationId, assignorEmail, objects, pastSlates: past, comingSlates: coming };
  });
}

/** Row-level security shows an association only to who names it, so each is asked for its short name. */
async function findAssociation({ dataSource, tenancy }: DemoGround, slug: string): Promise<string | null> {
  const rows = await dataSource.query<{ id: string }[]>('select association_ids() as id');
  for (const { id } of rows) {
    const found = await tenancy.read(id, (tx) => tx.existsBy(Association, { id, slug }));
    if (found) return id;
  }
  return null;
}
