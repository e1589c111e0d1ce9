import { ownKinds } from '../../../src/games/imports/import-kinds';
import type { ImportKind } from '../../../src/games/imports/import-kind';
import type { ImportRecord } from '../../../src/games/imports/import-record';
import type { ImportPlan } from '../../../src/games/imports/import-plan';
import { planImport, type PlanOptions } from '../../../src/games/imports/plan-import';

export const kinds = ownKinds.map(({ kind }) => kind);

export const options: PlanOptions = {
  association: {
    timeZone: 'Europe/Copenhagen',
    dateFormat: 'dd.MM.yyyy',
    currency: 'EUR',
    adultAge: 18,
    arrivalLeadMinutes: 20,
    wrapUpMinutes: 15,
  },
  today: '2026-06-01',
  whole: false,
  range: null,
};

export type Entries = Map<string, Map<string, ImportRecord>>;

/** Plans files given as text by kind; several of a kind with a suffix, as `games 2`. */
export function planned(
  files: Readonly<Record<string, string>>,
  entries: Entries = new Map(),
  changes: Partial<PlanOptions> = {},
  using: readonly ImportKind[] = kinds,
): ImportPlan {
  const handed = Object.entries(files).map(([name, text]) => ({
    kind: name.split(' ')[0] ?? '',
    name: `${name}.csv`,
    bytes: new TextEncoder().encode(text),
  }));
  return planImport(handed, entries, using, { ...options, ...changes });
}

/** What would be there after a plan. */
export function after(plan: ImportPlan, entries: Entries = new Map()): Entries {
  const result: Entries = new Map([...entries].map(([kind, records]) => [kind, new Map(records)]));
  for (const { kind, added, changed, removed } of plan.kinds) {
    const records = result.get(kind) ?? new Map<string, ImportRecord>();
    for (const { key, record } of added) records.set(key, record);
    for (const change of changed) records.set(change.key, change.after);
    for (const { key, after: left } of removed) {
      if (left === null) records.delete(key);
      else records.set(key, left);
    }
    result.set(kind, records);
  }
  return result;
}

/** A small association: everything that games and people need. */
export const basics = {
  levels: 'level,name\n1,Sprout\n2,Stem\n3,Reed\n',
  venues:
    'code,name,lat,lon,courts\nNORTH,North Hall,56.1,8.2,A|B\nSOUTH,South Hall,56.0,8.3,A\nBARN,The Barn,,,\n',
  officials: [
    'number,given_name,family_name,level,may_be_chief,lat,lon,birth_date,guardian_name,guardian_contact',
    '1001,Ada,Holm,3,yes,56.12,8.21,1980-01-02,,',
    '1002,Bo,Lund,1,no,56.05,8.25,2010-03-04,Cy Lund,cy@lund.example',
    '',
  ].join('\n'),
  divisions:
    'code,name,chief_min_level,umpire_min_level,chief_target_level,umpire_target_level,pairing_cost,game_minutes,priority\n' +
    'D1,First Division,2,1,3,2,6|0|1,100,1.5\n',
  teams: 'code,name,division\nHER,Herons,D1\nTER,Terns,D1\nGUL,Gulls,D1\n',
};
