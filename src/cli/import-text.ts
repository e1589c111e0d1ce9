import { describeCsvFault } from '../platform/csv/csv-fault';
import { headOf } from '../games/imports/import-kind';
import type { FieldValue } from '../games/imports/import-record';
import { isEmptyPlan, type ImportPlan, type KindPlan } from '../games/imports/import-plan';
import { textTable } from './text-table';

const addedShown = 10;

/** What files would do, for a terminal: a table, then the objects, then what somebody should look at. */
export function planText(plan: ImportPlan, options: { readonly full: boolean }): string {
  const rows = plan.kinds.map(({ kind, added, changed, removed, left }) => [
    kind,
    ...[added.length, changed.length, removed.length, left].map(String),
  ]);
  return [
    textTable(['List', 'Added', 'Changed', 'Removed', 'Left'], rows),
    ...plan.kinds.flatMap((part) => objectLines(part, options.full)),
    ...plan.notices.map((notice) => `? ${describeCsvFault(notice)}`),
  ].join('\n');
}

/** Every fault on a line of its own. */
export function faultText(plan: ImportPlan): string {
  return plan.faults.map(describeCsvFault).join('\n');
}

/** The last line: what became of it. */
export function outcomeText(plan: ImportPlan, outcome: 'planned' | 'stored' | 'refused'): string {
  const count = plan.faults.length;
  if (count > 0) return `${count} ${count === 1 ? 'fault' : 'faults'}; nothing was stored.`;
  if (isEmptyPlan(plan)) return 'Everything is so already; nothing to do.';
  return outcome === 'planned' ? 'Nothing was stored: this was a dry run.' : 'Stored.';
}

function objectLines({ noun, added, changed, removed }: KindPlan, full: boolean): string[] {
  const shown = full ? added : added.slice(0, addedShown);
  const more = added.length - shown.length;
  return [
    ...shown.map(({ key }) => `+ ${noun} ${key}`),
    ...(more > 0 ? [`+ … and ${more} more; --full shows them all`] : []),
    ...changed.map(({ key, fields }) => {
      const changes = fields.map(
        ({ field, before, after }) => `${headOf(field)} ${valueText(before)} → ${valueText(after)}`,
      );
      return `~ ${noun} ${key}: ${changes.join('; ')}`;
    }),
    ...removed.map(({ key, after }) => `- ${noun} ${key}: ${fateText(after)}`),
  ];
}

function fateText(after: Readonly<Record<string, FieldValue>> | null): string {
  if (after === null) return 'deleted';
  return after['status'] === 'CANCELLED' ? 'CANCELLED' : 'no longer active';
}

function valueText(value: FieldValue): string {
  if (value === null || value === '') return '(empty)';
  if (Array.isArray(value)) return value.length === 0 ? '(empty)' : value.join('|');
  return typeof value === 'boolean' ? (value ? 'yes' : 'no') : String(value);
}
