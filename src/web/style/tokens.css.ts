import { css } from './css';

/**
 * Colours, sizes and spaces. Colours with a meaning are those of Okabe and Ito ("Color Universal Design", 2008), which stay
 * apart for colour-blind eyes; everything else is paper, ink and, below the weekend picture only, the maple of a floor.
 */
export const tokens = css`
  :root {
    color-scheme: light dark;
    --paper: #f8f4ec;
    --sheet: #fffdf8;
    --ink: #25221d;
    --ink-quiet: #5d564b;
    --line: #d8d0c1;
    --line-strong: #8c8474;
    --floor: #f3e4c6;
    --floor-line: #cfb78a;
    --floor-bar: #fffaf0;
    --link: #00568c;
    --chosen: #0072b2;
    --chosen-ink: #ffffff;
    --settled: #007a59;
    --attention: #a86400;
    --broken: #b34a00;
    --attention-wash: #fbeed2;
    --broken-wash: #fbe3d5;
    --settled-wash: #dff1ea;
    --size-small: 0.875rem;
    --size-body: 1rem;
    --size-large: 1.5rem;
    --bold: 650;
    --space: 1rem;
    --round: 0.375rem;
  }
  @media (prefers-color-scheme: dark) {
    :root {
      --paper: #1e2023;
      --sheet: #27292c;
      --ink: #f1ece2;
      --ink-quiet: #bdb5a6;
      --line: #45464a;
      --line-strong: #8a867d;
      --floor: #39322a;
      --floor-line: #62543f;
      --floor-bar: #26241f;
      --link: #8accf5;
      --chosen: #56b4e9;
      --chosen-ink: #10202b;
      --settled: #2fc79b;
      --attention: #f0b429;
      --broken: #ff8b4a;
      --attention-wash: #3f341c;
      --broken-wash: #45291a;
      --settled-wash: #1b3a31;
    }
  }
`;
