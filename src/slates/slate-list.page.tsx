import { calendarSpan } from '../web/format/instants';
import { countText, numberText } from '../web/format/numbers';
import { page, type PageContent } from '../web/http/answer';
import { ActionForm, Field } from '../web/parts/form';
import { Mark } from '../web/parts/mark';
import { EmptyState } from '../web/parts/notice';
import type { SlateSummary } from './slate-summary.query';

export interface SlateListProps {
  readonly slug: string;
  readonly language: string;
  /** `YYYY-MM-DD` in the association's zone. */
  readonly today: string;
  readonly slates: readonly SlateSummary[];
  /** Whether the member may open a slate. */
  readonly canChange: boolean;
  /** What was typed into the form, when it could not be used. */
  readonly typed?: { readonly name: string; readonly fromDate: string; readonly toDate: string };
  readonly errors?: Readonly<Record<string, string>>;
}

/** Home of the season: the coming slates and how ready each is, the past ones below. */
export function slateListPage(props: SlateListProps): PageContent {
  const coming = props.slates.filter((slate) => slate.toDate >= props.today).reverse();
  const past = props.slates.filter((slate) => slate.toDate < props.today);
  return page({
    title: 'Slates',
    ...(props.errors === undefined ? {} : { status: 422 }),
    body: (
      <>
        <h1>Coming slates</h1>
        {coming.length === 0 ? (
          <EmptyState>
            <p>No slate lies ahead.</p>
            <p>
              {props.canChange
                ? 'Bring in the games first, then open a slate for their dates below.'
                : 'The assignor opens one when the games are known.'}
            </p>
          </EmptyState>
        ) : (
          <div class="beside">
            {coming.map((slate) => (
              <SlateSheet key={slate.id} slate={slate} {...props} />
            ))}
          </div>
        )}
        {props.canChange ? <NewSlateForm {...props} /> : null}
        {past.length === 0 ? null : (
          <section class="stack">
            <h2>Past slates</h2>
            <ul>
              {past.map((slate) => (
                <li key={slate.id}>
                  <a href={`/${props.slug}/slates/${slate.id}`}>{slate.name}</a>{' '}
                  <small>
                    {calendarSpan(slate.fromDate, slate.toDate, props.language)},{' '}
                    {countText(slate.games, 'game', 'games')}
                  </small>
                </li>
              ))}
            </ul>
          </section>
        )}
      </>
    ),
  });
}

function SlateSheet({ slate, slug, language }: { slate: SlateSummary } & SlateListProps) {
  const address = `/${slug}/slates/${slate.id}`;
  return (
    <article class="sheet">
      <h2>
        <a href={address}>{slate.name}</a>
      </h2>
      <p class="quiet">{calendarSpan(slate.fromDate, slate.toDate, language)}</p>
      <p>
        {countText(slate.games, 'game', 'games')}, {numberText(slate.seats.filled, language)} of{' '}
        {numberText(slate.seats.total, language)} seats filled
        {slate.cancelledGames === 0 ? '' : `, ${countText(slate.cancelledGames, 'game', 'games')} cancelled`}
      </p>
      <ul class="plain">
        {readiness(slate).map(({ mark, words, path }) => (
          <li key={words}>
            <Mark state={mark}>{path === null ? words : <a href={`${address}${path}`}>{words}</a>}</Mark>
          </li>
        ))}
      </ul>
    </article>
  );
}

interface ReadinessLine {
  readonly mark: 'open' | 'attention' | 'accepted' | 'asked' | 'declined' | 'planned';
  readonly words: string;
  /** Below the slate's address, where it is mended; `null`: nothing to do. */
  readonly path: string | null;
}

/** What stands between a slate and a settled weekend, the nearest step first. */
export function readiness(slate: SlateSummary): ReadinessLine[] {
  const lines: ReadinessLine[] = [];
  const { unpublished, replies, seats, latestBuild } = slate;
  const changes = unpublished.added + unpublished.revised + unpublished.ended;
  if (latestBuild?.state === 'waiting' || latestBuild?.state === 'solving') {
    lines.push({ mark: 'asked', words: 'being built now', path: `/builds/${latestBuild.id}` });
  }
  if (slate.games === 0) lines.push({ mark: 'attention', words: 'no games yet', path: '' });
  else if (seats.filled === 0)
    lines.push({ mark: 'planned', words: 'no crews yet: build it', path: '#build' });
  else if (seats.open > 0) {
    lines.push({ mark: 'open', words: countText(seats.open, 'open seat', 'open seats'), path: '#crews' });
  }
  if (changes > 0) {
    const told =
      slate.published === null
        ? 'not published yet'
        : `${countText(changes, 'change', 'changes')} not published yet`;
    lines.push({ mark: 'attention', words: told, path: '/publication' });
  }
  if (replies.declined > 0) {
    lines.push({ mark: 'declined', words: `${replies.declined} declined`, path: '#crews' });
  }
  if (replies.awaited > 0)
    lines.push({ mark: 'asked', words: `${replies.awaited} without an answer`, path: '#crews' });
  if (replies.accepted > 0)
    lines.push({ mark: 'accepted', words: `${replies.accepted} accepted`, path: null });
  return lines;
}

function NewSlateForm({ slug, typed, errors }: SlateListProps) {
  return (
    <section class="sheet">
      <h2>Open a slate</h2>
      <p class="quiet">It takes in every game of its dates that no other slate has.</p>
      <ActionForm action={`/${slug}/slates`} class="inline">
        <Field
          name="name"
          label="Name"
          required
          maxLength={80}
          value={typed?.name ?? ''}
          error={errors?.['name']}
        />
        <Field
          name="fromDate"
          label="First day"
          type="date"
          required
          value={typed?.fromDate ?? ''}
          error={errors?.['fromDate']}
        />
        <Field
          name="toDate"
          label="Last day"
          type="date"
          required
          value={typed?.toDate ?? ''}
          error={errors?.['toDate']}
        />
        <button type="submit">Open it</button>
      </ActionForm>
    </section>
  );
}
