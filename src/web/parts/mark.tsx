import type { ComponentChildren } from 'preact';

/** States that are told by a mark first, a word second and a colour last. */
export type MarkState =
  | 'open'
  | 'planned'
  | 'asked'
  | 'accepted'
  | 'declined'
  | 'locked'
  | 'attention'
  | 'fault'
  | 'chosen'
  | 'none';

const tones: Record<MarkState, string> = {
  open: 'broken',
  planned: '',
  asked: '',
  accepted: 'settled',
  declined: 'broken',
  locked: '',
  attention: 'attention',
  fault: 'broken',
  chosen: 'chosen',
  none: '',
};

const stroke = { fill: 'none', stroke: 'currentColor', 'stroke-width': '1.75' } as const;

/** The mark of a state, followed by the words that say it. */
export function Mark(props: { readonly state: MarkState; readonly children: ComponentChildren }) {
  return (
    <span class={`mark ${tones[props.state]}`.trim()}>
      <svg width="14" height="14" viewBox="0 0 14 14" aria-hidden="true">
        {drawing(props.state)}
      </svg>
      <span>{props.children}</span>
    </span>
  );
}

function drawing(state: MarkState) {
  switch (state) {
    case 'open':
      return <circle cx="7" cy="7" r="5.5" {...stroke} stroke-dasharray="4 2.9" />;
    case 'planned':
      return <circle cx="7" cy="7" r="5.5" {...stroke} />;
    case 'asked':
      return (
        <circle
          cx="7"
          cy="7"
          r="5.5"
          {...stroke}
          stroke-dasharray="0.2 3.1"
          stroke-linecap="round"
          stroke-width="2.25"
        />
      );
    case 'accepted':
      return (
        <>
          <circle cx="7" cy="7" r="6" fill="currentColor" />
          <path d="M4 7.2 6.2 9.4 10 5" fill="none" stroke="var(--paper)" stroke-width="1.75" />
        </>
      );
    case 'declined':
      return (
        <>
          <circle cx="7" cy="7" r="5.5" {...stroke} />
          <path d="M2 12 12 2" {...stroke} />
        </>
      );
    case 'locked':
      return <path d="M5 1.5H2v11h3M9 1.5h3v11H9" {...stroke} />;
    case 'attention':
      return (
        <>
          <path d="M7 1.5 13 12.5H1Z" {...stroke} />
          <path d="M7 5.5v3.5M7 10.2v1" {...stroke} />
        </>
      );
    case 'fault':
      return <path d="M2.5 2.5 11.5 11.5M11.5 2.5 2.5 11.5" {...stroke} />;
    case 'chosen':
      return <path d="M2 7.5 5.5 11 12 3" {...stroke} stroke-width="2.25" />;
    case 'none':
      return <path d="M3 7h8" {...stroke} />;
  }
}
