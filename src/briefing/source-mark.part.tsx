import type { JSX } from 'preact';
import type { Briefing } from './briefing-document';

/** Every source that the sheet names, once each, in the order of appearance. */
export function sourcesOf(briefing: Briefing): string[] {
  const lines = [
    ...briefing.warnings,
    ...briefing.clock,
    ...briefing.checklist.flatMap(({ items }) => items),
    ...briefing.divisionRules,
    ...briefing.care,
    ...briefing.contingencies,
  ];
  return [...new Set(lines.map(({ source }) => source))];
}

/** A small number that leads to the source at the foot of the sheet. */
export function SourceMark(props: {
  readonly sources: readonly string[];
  readonly source: string;
}): JSX.Element {
  const number = props.sources.indexOf(props.source) + 1;
  return (
    <a class="source" href={`#source-${number}`} title={props.source}>
      {number}
    </a>
  );
}
