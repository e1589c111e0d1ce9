import type { ComponentChildren } from 'preact';

/** Something to know before reading on. `fault` is announced to screen readers at once. */
export function Notice(props: {
  readonly tone: 'good' | 'attention' | 'fault' | 'plain';
  readonly children: ComponentChildren;
}) {
  const tone = props.tone === 'plain' ? '' : props.tone;
  return (
    <div class={`notice ${tone}`.trim()} role={props.tone === 'fault' ? 'alert' : 'status'}>
      {props.children}
    </div>
  );
}

/** Says why there is nothing here and what to do next. */
export function EmptyState(props: { readonly children: ComponentChildren }) {
  return <div class="empty stack">{props.children}</div>;
}
