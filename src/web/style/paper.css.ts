import { css } from './css';

/** Sheets that are read on a phone and taken along on paper: lists to tick, times of a day, drawings, sources. */
export const paper = css`
  .paper > * + * {
    margin-top: 1.25rem;
  }
  .paper section > * + * {
    margin-top: 0.5rem;
  }
  .day-clock {
    display: grid;
    grid-template-columns: max-content 1fr;
    gap: 0.25rem 0.85rem;
    margin: 0;
  }
  .day-clock dt {
    font-weight: var(--bold);
    text-align: right;
  }
  .day-clock dd {
    margin: 0;
  }
  .ticks {
    padding: 0;
    list-style: none;
  }
  .ticks label {
    display: grid;
    grid-template-columns: 1.5rem 4.25rem 1fr;
    gap: 0.5rem;
    align-items: start;
    min-height: 2.75rem;
    padding: 0.35rem 0;
  }
  .ticks input {
    margin-top: 0.15rem;
  }
  .ticks .for {
    font-size: var(--size-small);
    color: var(--ink-quiet);
    padding-top: 0.1rem;
  }
  .ticks .for-chief .for,
  .ticks .for-umpire .for {
    color: var(--ink);
    font-weight: var(--bold);
  }
  .ticks .for-umpire .for {
    text-decoration: underline dotted;
    text-underline-offset: 0.2em;
  }
  .ticks input:checked ~ * {
    color: var(--ink-quiet);
  }
  .source {
    font-size: 0.75em;
    vertical-align: super;
    line-height: 0;
    padding: 0 0.15em;
    text-decoration: none;
  }
  .court-picture {
    display: block;
    width: 100%;
    max-width: 26rem;
    height: auto;
  }
  .court-picture .on-disc {
    fill: var(--paper);
  }
  .select-all {
    user-select: all;
  }
  dd.missing {
    font-style: italic;
  }
  @media print {
    @page {
      margin: 9mm;
    }
    .paper {
      font-size: 7.8pt;
      line-height: 1.22;
      columns: 3;
      column-gap: 5mm;
    }
    .paper > * + * {
      margin-top: 1.6mm;
    }
    .paper section > * + *,
    .paper .notice > * + * {
      margin-top: 0.6mm;
    }
    .paper h1 {
      font-size: 11pt;
    }
    .paper h2 {
      font-size: 8.2pt;
      border-bottom: 0.3mm solid var(--line-strong);
      break-after: avoid;
    }
    .paper h3 {
      font-size: inherit;
      break-after: avoid;
    }
    .paper small {
      font-size: inherit;
    }
    .paper li,
    .paper dd {
      break-inside: avoid;
    }
    .paper .notice {
      padding: 0.8mm 1.5mm;
    }
    .paper .pairs,
    .paper .day-clock {
      gap: 0.2mm 2mm;
    }
    .paper .ticks label {
      min-height: 0;
      padding: 0.25mm 0;
      grid-template-columns: 3mm 11mm 1fr;
      gap: 1mm;
    }
    .paper .ticks input {
      appearance: none;
      width: 2.6mm;
      height: 2.6mm;
      min-height: 0;
      padding: 0;
      margin: 0.3mm 0 0;
      border: 0.25mm solid #000;
      border-radius: 0;
    }
    .paper .ticks .for {
      font-size: inherit;
      padding: 0;
    }
    .court-picture {
      max-width: 52mm;
    }
  }
`;
