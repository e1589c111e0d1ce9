import { css } from './css';

/** Tables, figures, forms, notices: what pages are put together from. */
export const parts = css`
  .row {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.5rem 1rem;
  }
  .stack > * + * {
    margin-top: 0.75rem;
  }
  .quiet {
    color: var(--ink-quiet);
  }
  .small {
    font-size: var(--size-small);
  }
  .number {
    text-align: right;
    white-space: nowrap;
  }
  .nowrap {
    white-space: nowrap;
  }
  .out-of-sight {
    position: absolute;
    width: 1px;
    height: 1px;
    margin: -1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
  .sheet {
    background: var(--sheet);
    border: 1px solid var(--line);
    border-radius: var(--round);
    padding: 1rem;
  }
  .sheet > * + * {
    margin-top: 0.75rem;
  }
  .beside {
    display: grid;
    gap: 1rem;
  }
  @media (min-width: 52rem) {
    .beside {
      grid-template-columns: repeat(auto-fit, minmax(20rem, 1fr));
      align-items: start;
    }
  }

  .figures {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(9.5rem, 1fr));
    gap: 1px;
    background: var(--line);
    border: 1px solid var(--line);
    border-radius: var(--round);
    overflow: hidden;
  }
  .figure {
    display: flex;
    flex-direction: column;
    background: var(--sheet);
    padding: 0.65rem 0.85rem;
  }
  .figure dt {
    font-size: var(--size-small);
    color: var(--ink-quiet);
  }
  .figure dd {
    margin: 0;
  }
  .figure .amount {
    font-size: var(--size-large);
    font-weight: var(--bold);
    line-height: 1.25;
  }
  .figure .unit {
    font-size: var(--size-small);
    font-weight: 400;
  }

  .scroll {
    overflow-x: auto;
  }
  table {
    border-collapse: collapse;
    width: 100%;
  }
  caption {
    text-align: left;
    font-weight: var(--bold);
    padding-bottom: 0.35rem;
  }
  th,
  td {
    text-align: left;
    vertical-align: top;
    padding: 0.5rem 0.75rem 0.5rem 0;
    border-bottom: 1px solid var(--line);
  }
  thead th {
    font-size: var(--size-small);
    color: var(--ink-quiet);
    vertical-align: bottom;
  }
  th.number,
  td.number {
    text-align: right;
  }
  th:last-child,
  td:last-child {
    padding-right: 0;
  }
  @media (max-width: 40rem) {
    .cards thead {
      position: absolute;
      width: 1px;
      height: 1px;
      overflow: hidden;
      clip-path: inset(50%);
    }
    .cards,
    .cards tbody,
    .cards caption,
    .cards tr,
    .cards th,
    .cards td {
      display: block;
    }
    .cards tr {
      padding: 0.65rem 0;
      border-bottom: 1px solid var(--line);
    }
    .cards th,
    .cards td {
      border: 0;
      padding: 0.1rem 0;
      text-align: left;
    }
    .cards td[data-label]:not(:empty)::before {
      content: attr(data-label) ' ';
      font-size: var(--size-small);
      color: var(--ink-quiet);
    }
  }

  .mark {
    display: inline-flex;
    align-items: flex-start;
    gap: 0.35rem;
  }
  .mark svg {
    flex: none;
    /* Beside the first line, however small its text is. */
    margin-top: calc((1lh - 14px) / 2);
  }
  .settled > svg {
    color: var(--settled);
  }
  .attention > svg {
    color: var(--attention);
  }
  .broken > svg {
    color: var(--broken);
  }
  .chosen > svg {
    color: var(--chosen);
  }

  .notice {
    border: 1px solid var(--line);
    border-left-width: 0.35rem;
    border-radius: var(--round);
    padding: 0.65rem 1rem;
    background: var(--sheet);
  }
  .notice > * + * {
    margin-top: 0.35rem;
  }
  .notice.good {
    border-left-color: var(--settled);
  }
  .notice.attention {
    border-left-color: var(--attention);
    background: var(--attention-wash);
  }
  .notice.fault {
    border-left-color: var(--broken);
    background: var(--broken-wash);
  }
  .empty {
    border: 1px dashed var(--line-strong);
    border-radius: var(--round);
    padding: 1.5rem 1rem;
    text-align: center;
  }
  .plain {
    padding: 0;
    list-style: none;
  }
  .pairs {
    display: grid;
    grid-template-columns: max-content 1fr;
    gap: 0.35rem 1rem;
  }
  .pairs dt {
    color: var(--ink-quiet);
  }
  .pairs dd {
    margin: 0;
  }
  @media (max-width: 30rem) {
    .pairs {
      grid-template-columns: 1fr;
      gap: 0;
    }
    .pairs dd {
      margin-bottom: 0.5rem;
    }
  }
`;
