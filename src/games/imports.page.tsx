import { countText } from '../web/format/numbers';
import type { CsvFault } from '../platform/csv/csv-fault';
import { page, type PageContent } from '../web/http/answer';
import { ActionForm } from '../web/parts/form';
import { Notice } from '../web/parts/notice';
import { DataTable } from '../web/parts/table';
import { headOf, type FieldValue, type ImportKind } from './imports/import-kind';
import { isEmptyPlan, type ImportPlan, type KindPlan } from './imports/import-plan';

export interface ImportsPageProps {
  readonly slug: string;
  readonly kinds: readonly ImportKind[];
  /** What the files that were sent would do, or did. */
  readonly result: { readonly plan: ImportPlan; readonly isStored: boolean } | null;
}

/** Bringing lists in: choose files, see what they would do, store. */
export function importsPage(props: ImportsPageProps): PageContent {
  const { slug, kinds, result } = props;
  return page({
    title: 'Bring in lists',
    ...(result !== null && result.plan.faults.length > 0 ? { status: 422 } : {}),
    body: (
      <>
        <h1>Bring in lists</h1>
        {result === null ? null : <Result {...result} />}
        <ActionForm action={`/${slug}/imports`} multipart class="sheet">
          <p>
            Lists are CSV files as a spreadsheet saves them. First look what they would do; nothing is stored
            while any fault stands, and bringing the same file in again changes nothing.
          </p>
          {kinds.map((kind) => (
            <div class="field" key={kind.name}>
              <label for={`file-${kind.name}`}>{titleOf(kind.name)}</label>
              <input id={`file-${kind.name}`} name={kind.name} type="file" accept=".csv,text/csv" />
            </div>
          ))}
          <div class="row">
            <button type="submit" name="do" value="look">
              Look what they would do
            </button>
            <button type="submit" name="do" value="store">
              Store them
            </button>
          </div>
        </ActionForm>
        <section class="stack">
          <h2>The columns of each list</h2>
          {kinds.map((kind) => (
            <KindSheet key={kind.name} kind={kind} />
          ))}
        </section>
      </>
    ),
  });
}

function Result({ plan, isStored }: { plan: ImportPlan; isStored: boolean }) {
  const { faults, notices } = plan;
  return (
    <div class="stack" id="result">
      {faults.length > 0 ? (
        <Notice tone="fault">
          <p>
            {countText(faults.length, 'fault', 'faults')}. Nothing was stored. Mend the files and send them
            again.
          </p>
        </Notice>
      ) : (
        <Notice tone={isStored ? 'good' : 'plain'}>
          <p>{verdict(plan, isStored)}</p>
        </Notice>
      )}
      {faults.length === 0 ? null : <FaultTable caption="Faults" faults={faults} />}
      {notices.length === 0 ? null : <FaultTable caption="Worth a look" faults={notices} />}
      {plan.kinds.map((part) => (
        <KindResult key={part.kind} part={part} />
      ))}
    </div>
  );
}

function verdict(plan: ImportPlan, isStored: boolean): string {
  if (isEmptyPlan(plan)) return 'Everything in these files is so already. Nothing changes.';
  return isStored
    ? 'Stored.'
    : 'No faults. Choose the files again and store them when this is what you want.';
}

function FaultTable({ caption, faults }: { caption: string; faults: readonly CsvFault[] }) {
  return (
    <DataTable<CsvFault>
      caption={caption}
      rows={faults}
      keyOf={(fault) => JSON.stringify(fault)}
      columns={[
        {
          name: 'Where',
          cell: (fault) => (
            <>
              {fault.file}, line {fault.line}
              {fault.column === null ? '' : `, ${fault.column}`}
            </>
          ),
        },
        { name: 'What stands there', cell: (fault) => <code>{fault.value}</code> },
        { name: 'What is wrong', cell: (fault) => fault.message },
        { name: 'What to try', cell: (fault) => fault.remedy },
      ]}
    />
  );
}

const shownMax = 50;

function KindResult({ part }: { part: KindPlan }) {
  const { added, changed, removed, left } = part;
  return (
    <details open={changed.length > 0 && changed.length <= 10}>
      <summary>
        {titleOf(part.kind)}: {added.length} new, {changed.length} changed, {removed.length} withdrawn, {left}{' '}
        as they are
      </summary>
      <ul>
        {added.slice(0, shownMax).map(({ key }) => (
          <li key={key}>new: {key}</li>
        ))}
        {changed.slice(0, shownMax).map(({ key, fields }) => (
          <li key={key}>
            changed: {key}:{' '}
            {fields
              .map(
                ({ field, before, after }) =>
                  `${headOf(field)} from ${valueText(before)} to ${valueText(after)}`,
              )
              .join('; ')}
          </li>
        ))}
        {removed.slice(0, shownMax).map(({ key }) => (
          <li key={key}>withdrawn: {key}</li>
        ))}
        {[added, changed, removed].some((list) => list.length > shownMax) ? <li>and more of each</li> : null}
      </ul>
    </details>
  );
}

function valueText(value: FieldValue): string {
  if (value === null || value === '') return 'nothing';
  return Array.isArray(value) ? value.join(' ') : String(value);
}

function KindSheet({ kind }: { kind: ImportKind }) {
  return (
    <details>
      <summary>{titleOf(kind.name)}</summary>
      <DataTable<[string, ImportKind['columns'][string]]>
        caption={<span class="out-of-sight">Columns of {kind.name}</span>}
        rows={Object.entries(kind.columns)}
        keyOf={([field]) => field}
        columns={[
          { name: 'Column', cell: ([field]) => <code>{headOf(field)}</code> },
          { name: 'Needed', cell: ([, column]) => (column.required ? 'yes' : 'no') },
          { name: 'Form', cell: ([, column]) => column.cell.form },
          { name: 'Meaning', cell: ([, column]) => column.says },
        ]}
      />
    </details>
  );
}

/** `travel-legs` as "Travel legs". */
function titleOf(kind: string): string {
  const words = kind.replaceAll('-', ' ');
  return words.slice(0, 1).toUpperCase() + words.slice(1);
}
