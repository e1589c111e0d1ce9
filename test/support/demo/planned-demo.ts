import { demoAssociation } from '../../../src/demo/demo-association';
import { readDemoFiles, type DemoKind } from '../../../src/demo/demo-files';
import type { ImportRecord } from '../../../src/games/imports/import-record';
import { ownKinds } from '../../../src/games/imports/import-kinds';
import type { ImportPlan } from '../../../src/games/imports/import-plan';
import { planImport } from '../../../src/games/imports/plan-import';
import { crewsKind } from '../../../src/slates/import-crews';

export interface PlannedDemo {
  readonly plan: ImportPlan;
  /** What each list brings, in order of its lines. */
  readonly records: (kind: DemoKind) => readonly ImportRecord[];
}

/** What importing the demo's lists into an empty association would do, without a database. */
export async function plannedDemo(today: string, kinds?: readonly DemoKind[]): Promise<PlannedDemo> {
  const { timeZone, dateFormat, currency, policy } = demoAssociation;
  const { adultAge, arrivalLeadMinutes, wrapUpMinutes } = policy;
  const plan = planImport(
    await readDemoFiles(today, kinds),
    new Map(),
    [...ownKinds, crewsKind].map(({ kind }) => kind),
    {
      association: { timeZone, dateFormat, currency, adultAge, arrivalLeadMinutes, wrapUpMinutes },
      today,
      whole: false,
      range: null,
    },
  );
  const records = (kind: DemoKind) =>
    plan.kinds.find((part) => part.kind === kind)?.added.map(({ record }) => record) ?? [];
  return { plan, records };
}
