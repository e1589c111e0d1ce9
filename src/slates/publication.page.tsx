import { calendarDay } from '../web/format/instants';
import { countText } from '../web/format/numbers';
import { page, type PageContent } from '../web/http/answer';
import { ActionForm } from '../web/parts/form';
import { Mark } from '../web/parts/mark';
import { EmptyState, Notice } from '../web/parts/notice';
import type { PublicationView, ToldLine } from './publication-view.query';
import { seatWords } from './seat-words';

export interface PublicationPageProps {
  readonly slug: string;
  readonly language: string;
  readonly view: PublicationView;
  /** Made anew for each time the page is drawn, so that pressing twice publishes once. */
  readonly idempotencyKey: string;
  readonly refusals?: readonly string[];
}

/** What publishing would tell whom, and the button. */
export function publicationPage(props: PublicationPageProps): PageContent {
  const { view, slug } = props;
  const address = `/${slug}/slates/${view.slate.id}`;
  const { added, revised, ended, unchanged } = view.review.preview;
  const reasons = props.refusals ?? view.review.reasons;
  const canPublish = view.told.length > 0 && view.review.reasons.length === 0;
  return page({
    title: `Publish ${view.slate.name}`,
    ...(props.refusals === undefined ? {} : { status: 409 }),
    body: (
      <>
        <p class="trail">
          <a href={`/${slug}`}>Slates</a> / <a href={address}>{view.slate.name}</a>
        </p>
        <h1>Publish</h1>
        {reasons.length === 0 ? null : (
          <Notice tone="fault">
            <p>It cannot be published like this:</p>
            <ul>
              {reasons.map((reason) => (
                <li key={reason}>{reason}</li>
              ))}
            </ul>
          </Notice>
        )}
        {view.told.length === 0 ? (
          <EmptyState>
            <p>Everybody has been told how it stands.</p>
            <p>
              <a href={address}>Back to the slate</a>
            </p>
          </EmptyState>
        ) : (
          <p>
            {countText(view.told.length, 'official', 'officials')} would hear of it:{' '}
            {[
              countText(added.length, 'seat is offered', 'seats are offered'),
              countText(revised.length, 'changed seat is asked again', 'changed seats are asked again'),
              countText(ended.length, 'seat is taken back', 'seats are taken back'),
            ].join(', ')}
            .{unchanged === 0 ? '' : ` Nothing is said about the ${unchanged} that stand.`}
          </p>
        )}
        {canPublish ? (
          <ActionForm action={`${address}/publication`}>
            <input type="hidden" name="idempotencyKey" value={props.idempotencyKey} />
            <input type="hidden" name="version" value={String(view.review.version)} />
            <button class="first" type="submit">
              Publish and tell them
            </button>
          </ActionForm>
        ) : null}
        <ul class="plain stack">
          {view.told.map(({ official, lines }) => (
            <li key={official.id} class="sheet">
              <h2>{official.name}</h2>
              <ul class="plain">
                {lines.map((line) => (
                  <li key={`${line.game.id} ${line.news}`}>
                    <NewsLine line={line} language={props.language} />
                  </li>
                ))}
              </ul>
            </li>
          ))}
        </ul>
      </>
    ),
  });
}

const newsMarks = { asked: 'asked', 'asked-again': 'attention', released: 'declined' } as const;
const differenceWords = { time: 'another time', venue: 'another venue', seat: 'the other seat' } as const;
const releaseWords = {
  replaced: 'no longer needed, somebody else takes it',
  withdrawn: 'no longer needed',
  'game-cancelled': 'the game is cancelled',
} as const;

function NewsLine({ line, language }: { line: ToldLine; language: string }) {
  const { game } = line;
  return (
    <Mark state={newsMarks[line.news]}>
      <b>{newsWords(line)}</b>: {calendarDay(game.localDate, language)}, {game.localTime}, {game.home.name} –{' '}
      {game.away.name}, {game.venue.name}
    </Mark>
  );
}

function newsWords(line: ToldLine): string {
  const seat = seatWords[line.seat];
  switch (line.news) {
    case 'asked':
      return `Asked as ${seat}`;
    case 'asked-again':
      return `Asked again as ${seat}, ${line.differences.map((name) => differenceWords[name]).join(' and ')}`;
    case 'released':
      return line.reason === null ? 'Released' : `Released, ${releaseWords[line.reason]}`;
  }
}
