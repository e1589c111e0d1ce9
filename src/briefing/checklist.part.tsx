import type { JSX } from 'preact';
import type { ChecklistSection } from './briefing-document';
import { SourceMark } from './source-mark.part';

const roleWords = { chief: 'chief', umpire: 'umpire', both: 'both' } as const;

/** The checklist with boxes to tick, each line with whom it is for in words. */
export function ChecklistSections(props: {
  readonly sections: readonly ChecklistSection[];
  readonly sources: readonly string[];
}): JSX.Element {
  return (
    <>
      {props.sections.map(({ moment, title, items }) => (
        <section data-moment={moment}>
          <h2>{title}</h2>
          <ul class="ticks">
            {items.map(({ id, role, text, source }) => (
              <li class={`for-${role}`}>
                <label>
                  <input type="checkbox" name={id} autocomplete="off" />
                  <span class="for">{roleWords[role]}</span>
                  <span>
                    {text}
                    <SourceMark sources={props.sources} source={source} />
                  </span>
                </label>
              </li>
            ))}
          </ul>
        </section>
      ))}
    </>
  );
}
