import type { ComponentChildren } from 'preact';

/** A row of figures, each with its unit; the note says what it is measured against. */
export function Figures(props: { readonly children: ComponentChildren }) {
  return <dl class="figures">{props.children}</dl>;
}

export function Figure(props: {
  readonly name: string;
  readonly amount: string;
  readonly unit?: string;
  readonly children?: ComponentChildren;
}) {
  return (
    <div class="figure">
      <dt>{props.name}</dt>
      <dd class="amount">
        {props.amount}
        {props.unit === undefined ? null : <span class="unit"> {props.unit}</span>}
      </dd>
      {props.children === undefined ? null : <dd class="small">{props.children}</dd>}
    </div>
  );
}
