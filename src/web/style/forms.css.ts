import { css } from './css';

/** Forms and buttons. Everything to press is at least 44 pixels high (WCAG 2.5.5). */
export const forms = css`
  form > * + * {
    margin-top: 0.85rem;
  }
  form > input[type='hidden'] + * {
    margin-top: 0;
  }
  .field > label,
  .field > legend {
    display: block;
    font-weight: var(--bold);
  }
  .field > .hint {
    font-size: var(--size-small);
    color: var(--ink-quiet);
  }
  .field > .error {
    color: var(--ink);
    font-weight: var(--bold);
  }
  input,
  select,
  textarea {
    font: inherit;
    color: inherit;
    background: var(--sheet);
    border: 1px solid var(--line-strong);
    border-radius: var(--round);
    padding: 0.5rem 0.65rem;
    min-height: 2.75rem;
    max-width: 100%;
  }
  input:not([type='checkbox'], [type='radio'], [type='number'], [type='file']),
  select,
  textarea {
    width: 100%;
  }
  input[type='number'] {
    width: 8rem;
  }
  input[type='checkbox'],
  input[type='radio'] {
    min-height: 0;
    width: 1.25rem;
    height: 1.25rem;
    accent-color: var(--chosen);
  }
  [aria-invalid='true'] {
    border: 2px solid var(--broken);
  }
  .button,
  button {
    display: inline-flex;
    align-items: center;
    justify-content: center;
    gap: 0.5rem;
    min-height: 2.75rem;
    padding: 0.35rem 1.1rem;
    font: inherit;
    font-weight: var(--bold);
    color: var(--ink);
    background: var(--sheet);
    border: 1px solid var(--line-strong);
    border-radius: var(--round);
    text-decoration: none;
    cursor: pointer;
  }
  .button:hover,
  button:hover {
    background: var(--line);
  }
  .button.first,
  button.first {
    background: var(--chosen);
    border-color: var(--chosen);
    color: var(--chosen-ink);
  }
  .button.first:hover,
  button.first:hover {
    background: var(--link);
    border-color: var(--link);
  }
  button.as-link {
    min-height: 2.75rem;
    padding: 0;
    border: 0;
    background: none;
    color: var(--link);
    font-weight: 400;
    text-decoration: underline;
  }
  .inline {
    display: flex;
    flex-wrap: wrap;
    align-items: end;
    gap: 0.75rem 1rem;
  }
  .inline > * + * {
    margin-top: 0;
  }
  summary {
    display: inline-flex;
    align-items: center;
    min-height: 2.75rem;
    cursor: pointer;
    color: var(--link);
  }
  summary::before {
    content: '+';
    width: 1.1em;
  }
  details[open] > summary::before {
    content: '\2212';
  }
  progress {
    width: 100%;
    height: 0.75rem;
    accent-color: var(--chosen);
  }
`;
