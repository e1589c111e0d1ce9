import { css } from './css';

/** On paper: black on white, no ways to press. */
export const print = css`
  @media print {
    :root {
      color-scheme: light;
      --paper: #fff;
      --sheet: #fff;
      --floor: #fff;
      --floor-bar: #fff;
      --floor-line: #999;
      --ink: #000;
      --ink-quiet: #333;
      --link: #000;
      --line: #999;
      --line-strong: #555;
      --settled: #000;
      --attention: #000;
      --broken: #000;
      --attention-wash: #fff;
      --broken-wash: #fff;
    }
    body {
      font-size: 10pt;
    }
    .head,
    .foot,
    .skip,
    form,
    .screen-only {
      display: none;
    }
    .floor {
      overflow: visible;
      border: 0;
    }
    .floor svg {
      min-width: 0;
    }
    tr,
    .sheet,
    .floor {
      break-inside: avoid;
    }
  }
`;
