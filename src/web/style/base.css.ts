import { css } from './css';

/** How plain elements look. */
export const base = css`
  *,
  *::before,
  *::after {
    box-sizing: border-box;
  }
  html {
    -webkit-text-size-adjust: 100%;
    text-size-adjust: 100%;
  }
  body {
    margin: 0;
    background: var(--paper);
    color: var(--ink);
    font:
      400 var(--size-body) / 1.5 system-ui,
      sans-serif;
    font-variant-numeric: tabular-nums;
    overflow-wrap: break-word;
  }
  h1,
  h2,
  h3,
  p,
  ul,
  ol,
  dl,
  figure,
  fieldset {
    margin: 0;
  }
  h1 {
    font-size: var(--size-large);
    font-weight: var(--bold);
    line-height: 1.2;
  }
  h2,
  h3 {
    font-size: var(--size-body);
    font-weight: var(--bold);
    line-height: 1.3;
  }
  strong,
  b,
  th,
  legend,
  summary {
    font-weight: var(--bold);
  }
  a {
    color: var(--link);
    text-underline-offset: 0.15em;
  }
  :focus-visible {
    outline: 3px solid var(--chosen);
    outline-offset: 2px;
    border-radius: 2px;
  }
  ul,
  ol {
    padding-left: 1.25rem;
  }
  small {
    font-size: var(--size-small);
    color: var(--ink-quiet);
  }
  code {
    font-family: ui-monospace, monospace;
    font-size: var(--size-small);
    overflow-wrap: anywhere;
  }
  svg text {
    font-family: system-ui, sans-serif;
    fill: currentColor;
  }
  @media (prefers-reduced-motion: no-preference) {
    a,
    button {
      transition: background-color 120ms;
    }
  }
`;
