import { css } from './css';

/** The frame of every page. */
export const frame = css`
  .skip {
    position: absolute;
    left: -999rem;
    top: 0;
    padding: 0.75rem 1rem;
    background: var(--sheet);
    z-index: 2;
  }
  .skip:focus {
    left: 0;
  }
  .wide {
    max-width: 76rem;
    margin: 0 auto;
    padding-inline: var(--space);
  }
  .head {
    border-bottom: 1px solid var(--line);
  }
  .head .wide {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0 1.5rem;
  }
  .brand {
    display: inline-flex;
    align-items: center;
    gap: 0.5rem;
    min-height: 3rem;
    padding-block: 0.35rem;
    line-height: 1.2;
    font-weight: var(--bold);
    color: var(--ink);
    text-decoration: none;
  }
  .brand svg {
    color: var(--broken);
  }
  .ways {
    display: flex;
    flex-wrap: wrap;
    gap: 0 0.25rem;
    margin: 0 -0.5rem;
    padding: 0;
    list-style: none;
  }
  .ways a {
    display: inline-flex;
    align-items: center;
    min-height: 2.75rem;
    padding: 0 0.5rem;
    color: var(--ink);
    text-decoration: none;
    border-bottom: 3px solid transparent;
  }
  .ways a:hover {
    border-bottom-color: var(--line-strong);
  }
  .ways a[aria-current] {
    border-bottom-color: var(--chosen);
    font-weight: var(--bold);
  }
  .who {
    margin-left: auto;
    display: flex;
    align-items: center;
    gap: 0.75rem;
    font-size: var(--size-small);
  }
  .who a {
    display: inline-flex;
    align-items: center;
    min-height: 2.75rem;
  }
  main {
    padding-block: 1.25rem 3rem;
  }
  main > * + * {
    margin-top: 1.25rem;
  }
  .trail {
    font-size: var(--size-small);
  }
  .trail a {
    display: inline-block;
    padding-block: 0.35rem;
  }
  .foot {
    border-top: 1px solid var(--line);
    color: var(--ink-quiet);
    font-size: var(--size-small);
  }
  .foot .wide {
    display: flex;
    flex-wrap: wrap;
    gap: 0 1.5rem;
    padding-block: 0.75rem 2rem;
  }
  .foot a {
    color: inherit;
  }
  .narrow {
    max-width: 34rem;
  }
`;
