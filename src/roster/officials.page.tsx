import { calendarDay } from '../web/format/instants';
import { countText, durationText } from '../web/format/numbers';
import { page, type PageContent } from '../web/http/answer';
import { Field } from '../web/parts/form';
import { LevelTicks } from '../web/parts/level-ticks';
import { Mark } from '../web/parts/mark';
import { EmptyState } from '../web/parts/notice';
import { DataTable } from '../web/parts/table';
import type { AvailabilityRule } from './availability-rule.entity';
import { recurrenceWords } from './recurrence-words';
import type { OfficialView } from './officials.service';

export interface OfficialsPageProps {
  readonly slug: string;
  readonly officials: readonly OfficialView[];
  /** Part of a name or number that the list was narrowed by. */
  readonly search: string;
  /** How many there are in all. */
  readonly total: number;
}

/** All officials, by family name. */
export function officialsPage({ slug, officials, search, total }: OfficialsPageProps): PageContent {
  return page({
    title: 'Officials',
    body: (
      <>
        <h1>Officials</h1>
        <form method="get" action={`/${slug}/officials`} class="inline" role="search">
          <Field name="search" label="Name or number" type="search" value={search} maxLength={100} />
          <button type="submit">Find</button>
        </form>
        {officials.length === 0 ? (
          <EmptyState>
            <p>{total === 0 ? 'Nobody is on the roster yet.' : 'Nobody matches that.'}</p>
            <p>
              {total === 0 ? (
                'They come in as a list.'
              ) : (
                <a href={`/${slug}/officials`}>Show all {countText(total, 'official', 'officials')}</a>
              )}
            </p>
          </EmptyState>
        ) : (
          <DataTable<OfficialView>
            caption={
              <span class="small quiet">
                {officials.length} of {countText(total, 'official', 'officials')}
              </span>
            }
            rows={officials}
            keyOf={({ official }) => official.id}
            columns={[
              {
                name: 'Name',
                cell: ({ official }) => (
                  <a href={`/${slug}/officials/${official.id}`}>
                    {official.familyName}, {official.givenName}
                  </a>
                ),
              },
              { name: 'Number', cell: ({ official }) => official.number },
              {
                name: 'Level',
                cell: ({ official, levelName }) => <LevelTicks level={official.level} name={levelName} />,
              },
              { name: 'Crew chief', cell: ({ official }) => (official.mayBeChief ? 'may be' : 'not yet') },
              {
                name: 'A day',
                isNumber: true,
                cell: ({ official }) => countText(official.maxGamesPerDay, 'game', 'games'),
              },
              {
                name: 'A slate',
                isNumber: true,
                cell: ({ official }) => countText(official.maxGamesPerSlate, 'game', 'games'),
              },
            ]}
          />
        )}
      </>
    ),
  });
}

export interface OfficialPageProps {
  readonly slug: string;
  readonly language: string;
  readonly view: OfficialView;
  readonly isMinor: boolean;
  /** Whether the member may see contact and availability. */
  readonly withContact: boolean;
  readonly availability: readonly AvailabilityRule[];
}

/** One official: level, limits, and, for those who answer for them, how to reach them and when they are free. */
export function officialPage(props: OfficialPageProps): PageContent {
  const { official, levelName, home } = props.view;
  const { language } = props;
  return page({
    title: `${official.givenName} ${official.familyName}`,
    body: (
      <div class="narrow stack">
        <p class="trail">
          <a href={`/${props.slug}/officials`}>Officials</a>
        </p>
        <h1>
          {official.givenName} {official.familyName}
        </h1>
        {official.active ? null : <Mark state="attention">No longer on the roster.</Mark>}
        {props.isMinor ? (
          <Mark state="attention">A minor: never alone with another minor, messages to the guardian.</Mark>
        ) : null}
        <dl class="pairs">
          <dt>Number</dt>
          <dd>{official.number}</dd>
          <dt>Level</dt>
          <dd>
            <LevelTicks level={official.level} name={levelName} />
          </dd>
          <dt>Crew chief</dt>
          <dd>{official.mayBeChief ? 'may be' : 'not yet'}</dd>
          <dt>At most</dt>
          <dd>
            {countText(official.maxGamesPerDay, 'game', 'games')} a day,{' '}
            {countText(official.maxGamesPerSlate, 'game', 'games')} a slate,{' '}
            {durationText(official.maxHomeMinutes)} from home
          </dd>
          <dt>Would like</dt>
          <dd>
            {official.wishedGamesPerSlate === null
              ? 'what the association thinks fit'
              : `${official.wishedGamesPerSlate} games a slate`}
          </dd>
          <dt>Languages</dt>
          <dd>{official.languages.length === 0 ? 'not noted' : official.languages.join(', ')}</dd>
          <dt>Certificate</dt>
          <dd>
            {official.certificateExpiresOn === null
              ? 'no end noted'
              : `until ${calendarDay(official.certificateExpiresOn, language)} ${official.certificateExpiresOn.slice(0, 4)}`}
          </dd>
        </dl>
        {props.withContact ? (
          <>
            <Contact official={official} hasHome={home !== null} isMinor={props.isMinor} />
            <Availability rules={props.availability} language={language} />
          </>
        ) : null}
      </div>
    ),
  });
}

function Contact(props: { official: OfficialView['official']; hasHome: boolean; isMinor: boolean }) {
  const { official } = props;
  return (
    <section class="sheet">
      <h2>Contact</h2>
      <dl class="pairs">
        {props.isMinor ? (
          <>
            <dt>Guardian</dt>
            <dd>
              {official.guardianName === '' ? <Mark state="attention">missing</Mark> : official.guardianName},{' '}
              {official.guardianContact}
            </dd>
          </>
        ) : null}
        <dt>E-mail</dt>
        <dd>
          {official.email === null ? 'none' : <a href={`mailto:${official.email}`}>{official.email}</a>}
        </dd>
        <dt>Telephone</dt>
        <dd>
          {official.phone === '' ? (
            'none'
          ) : (
            <a href={`tel:${official.phone.replace(/[^+\d]/g, '')}`}>{official.phone}</a>
          )}
          {official.phone !== '' && !official.sharePhoneWithCrew ? ' (not for partners)' : ''}
        </dd>
        <dt>Home</dt>
        <dd>
          {official.homeAddress === '' ? 'no address' : official.homeAddress}
          {props.hasHome ? null : (
            <>
              <br />
              <Mark state="attention">position missing</Mark>
            </>
          )}
        </dd>
      </dl>
    </section>
  );
}

const ruleWords = { available: 'Available', busy: 'Busy', reluctant: 'Would rather not' } as const;
const ruleMarks = { available: 'accepted', busy: 'fault', reluctant: 'attention' } as const;

function Availability({ rules, language }: { rules: readonly AvailabilityRule[]; language: string }) {
  return (
    <section class="stack">
      <h2>When free</h2>
      {rules.length === 0 ? (
        <EmptyState>
          <p>Nothing has been said yet, so no games are offered.</p>
        </EmptyState>
      ) : (
        <ul class="plain">
          {rules.map((rule) => (
            <li key={rule.id}>
              <Mark state={ruleMarks[rule.kind]}>
                {ruleWords[rule.kind]},{' '}
                {rule.recurrence === null ? 'on' : `${recurrenceWords(rule.recurrence)}, first on`}{' '}
                {calendarDay(rule.localDate, language)}, {rule.localTime.slice(0, 5)} for{' '}
                {durationText(rule.durationMinutes)}
                {rule.exceptDates.length === 0 ? '' : `, not on ${rule.exceptDates.join(', ')}`}
                {rule.note === '' ? '' : `: ${rule.note}`}
              </Mark>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
