import { css } from './css';

/** The weekend picture: lanes of a floor, games as bars with a person at each end. */
export const floor = css`
  .floor {
    background: var(--floor);
    border: 1px solid var(--floor-line);
    border-radius: var(--round);
    overflow-x: auto;
  }
  .floor svg {
    display: block;
    min-width: 60rem;
    width: 100%;
    height: auto;
    font-size: 12px;
  }
  .floor .hour {
    stroke: var(--floor-line);
    stroke-width: 1;
  }
  .floor .side {
    stroke: var(--floor-line);
    stroke-width: 2;
  }
  .floor .lane-name {
    font-weight: 650;
  }
  .floor .lane-venue,
  .floor .hour-name {
    fill: var(--ink-quiet);
  }
  .floor .bar {
    fill: var(--floor-bar);
    stroke: var(--ink);
    stroke-width: 1.25;
  }
  .floor .cancelled .bar {
    stroke-dasharray: 2 3;
  }
  .floor .cancelled .teams {
    text-decoration: line-through;
  }
  .floor .gap {
    stroke: var(--floor);
    stroke-width: 3;
  }
  .floor .end {
    fill: var(--ink);
    stroke: var(--ink);
    stroke-width: 1.5;
  }
  .floor .end.open {
    fill: none;
    stroke: var(--broken);
    stroke-width: 2.25;
    stroke-dasharray: 5 3;
  }
  .floor .end.asked {
    fill: var(--floor-bar);
    stroke-dasharray: 1.5 2.5;
    stroke-width: 2.25;
    stroke-linecap: round;
  }
  .floor .end.accepted {
    fill: var(--settled);
    stroke: var(--settled);
  }
  .floor .cut,
  .floor .bracket {
    fill: none;
    stroke: var(--ink);
    stroke-width: 2;
  }
  .floor .cut {
    stroke: var(--broken);
  }
  .floor .tick {
    stroke: var(--ink);
    stroke-width: 2;
  }
  .floor .person {
    font-weight: 650;
  }
  .floor .person.open {
    font-weight: 400;
    font-style: italic;
  }
  .floor a:focus-visible .bar {
    stroke: var(--chosen);
    stroke-width: 3;
  }
  .legend {
    display: flex;
    flex-wrap: wrap;
    gap: 0.25rem 1.25rem;
    font-size: var(--size-small);
    padding: 0;
    list-style: none;
  }
`;
