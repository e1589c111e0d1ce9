import type { ComponentChildren, JSX } from 'preact';
import type { Briefing, VenueNote } from './briefing-document';
import { ChecklistSections } from './checklist.part';
import { fibaCourt } from './court/court-dimensions';
import { HalfCourtPicture } from './court/half-court-picture';
import { SourceMark, sourcesOf } from './source-mark.part';

/** The pre-game sheet as a page: for the phone in the car park, and for paper, front and back of one sheet. */
export function BriefingPage({ briefing }: { readonly briefing: Briefing }): JSX.Element {
  const sources = sourcesOf(briefing);
  return (
    <article class="paper">
      <header>
        <h1>{briefing.title}</h1>
      </header>
      <Section title="The game">
        <dl class="pairs">
          {briefing.head.map(({ label, text }) => (
            <Pair label={label} text={text} />
          ))}
          {briefing.teams.map(({ side, name, colour }) => (
            <Pair label={side} text={`${name}: ${colour}`} />
          ))}
        </dl>
      </Section>
      <Section title="Crew">
        <dl class="pairs">
          {briefing.crew.map((member) => (
            <>
              <dt>{member.role}</dt>
              <dd>
                <b>{member.name}</b>
                {member.contact === '' ? null : ', '}
                {member.callNumber === null ? (
                  member.contact
                ) : (
                  <a href={`tel:${member.callNumber.replace(/[^+\d]/g, '')}`}>{member.contact}</a>
                )}
              </dd>
            </>
          ))}
        </dl>
      </Section>
      {briefing.warnings.length === 0 ? null : (
        <section class="notice attention" aria-label="Mind">
          <h2>Mind</h2>
          {briefing.warnings.map(({ text, source }) => (
            <p>
              {text}
              <SourceMark sources={sources} source={source} />
            </p>
          ))}
        </section>
      )}
      <Section title="The clock of the day">
        <dl class="day-clock">
          {briefing.clock.map(({ time, at, text, isAbout, source }) => (
            <>
              <dt>
                {isAbout ? 'about ' : ''}
                <time dateTime={at.toISOString()}>{time}</time>
              </dt>
              <dd>
                {text}
                <SourceMark sources={sources} source={source} />
              </dd>
            </>
          ))}
        </dl>
      </Section>
      <ChecklistSections sections={briefing.checklist} sources={sources} />
      <Section title="Who watches what">
        <HalfCourtPicture
          court={fibaCourt}
          trailSide="left"
          title="Half court with the six coverage areas, trail (T) and lead (L) at their set-up places"
        />
        <p>
          <small>
            Court to scale. The edges of the areas are a schematic: no published geometry was found. When the
            trail is on the other side, the picture is mirrored.
          </small>
        </p>
      </Section>
      <DivisionRules briefing={briefing} sources={sources} />
      <Section title="The venue">
        <Notes notes={briefing.venue} />
      </Section>
      <Section title="Safety">
        <Notes notes={briefing.safety} />
        {briefing.care.map(({ text, source }) => (
          <p>
            {text}
            <SourceMark sources={sources} source={source} />
          </p>
        ))}
        <p>
          The recognition tool itself, unaltered:{' '}
          <a href="https://bjsm.bmj.com/content/57/11/689" rel="noreferrer">
            bjsm.bmj.com/content/57/11/689
          </a>
        </p>
      </Section>
      <Section title="If things go wrong">
        {briefing.contingencies.map(({ title, steps, source }) => (
          <div>
            <h3>
              {title}
              <SourceMark sources={sources} source={source} />
            </h3>
            <ol>
              {steps.map((step) => (
                <li>{step}</li>
              ))}
            </ol>
          </div>
        ))}
      </Section>
      <Section title="Where it comes from">
        <ol>
          {sources.map((source, index) => (
            <li id={`source-${index + 1}`}>{source}</li>
          ))}
        </ol>
      </Section>
    </article>
  );
}

function DivisionRules(props: { readonly briefing: Briefing; readonly sources: readonly string[] }) {
  const { divisionRules, divisionNote } = props.briefing;
  return (
    <Section title="Otherwise than the standard game">
      {divisionRules.length === 0 && divisionNote === '' ? <p>Nothing: the standard rules hold.</p> : null}
      {divisionRules.length === 0 ? null : (
        <dl class="pairs">
          {divisionRules.map(({ label, text, standard, source }) => (
            <>
              <dt>{label}</dt>
              <dd>
                <b>{text}</b> (standard: {standard})
                <SourceMark sources={props.sources} source={source} />
              </dd>
            </>
          ))}
        </dl>
      )}
      {divisionNote === '' ? null : <p>{divisionNote}</p>}
    </Section>
  );
}

function Section(props: { readonly title: string; readonly children: ComponentChildren }) {
  return (
    <section>
      <h2>{props.title}</h2>
      {props.children}
    </section>
  );
}

function Pair(props: { readonly label: string; readonly text: string }) {
  return (
    <>
      <dt>{props.label}</dt>
      <dd>{props.text}</dd>
    </>
  );
}

function Notes({ notes }: { readonly notes: readonly VenueNote[] }) {
  return (
    <dl class="pairs">
      {notes.map(({ label, text, isMissing }) => (
        <>
          <dt>{label}</dt>
          <dd {...(isMissing ? { class: 'missing' } : {})}>{text}</dd>
        </>
      ))}
    </dl>
  );
}
