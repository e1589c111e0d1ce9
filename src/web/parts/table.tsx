import type { ComponentChildren } from 'preact';

export interface Column<Row> {
  readonly name: string;
  /** Right-aligned figures. */
  readonly isNumber?: boolean;
  readonly cell: (row: Row) => ComponentChildren;
}

/** A table whose rows become cards on a phone. The first column names the row. */
export function DataTable<Row>(props: {
  readonly caption: ComponentChildren;
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  readonly keyOf: (row: Row) => string;
}) {
  return (
    <table class="cards">
      <caption>{props.caption}</caption>
      <thead>
        <tr>
          {props.columns.map((column) => (
            <th key={column.name} scope="col" {...(column.isNumber === true ? { class: 'number' } : {})}>
              {column.name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {props.rows.map((row) => (
          <tr key={props.keyOf(row)}>
            {props.columns.map((column, index) =>
              index === 0 ? (
                <th key={column.name} scope="row">
                  {column.cell(row)}
                </th>
              ) : (
                <td
                  key={column.name}
                  data-label={column.name}
                  {...(column.isNumber === true ? { class: 'number' } : {})}
                >
                  {column.cell(row)}
                </td>
              ),
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
