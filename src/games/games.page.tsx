import { courtText } from '../places/court-text';
import { calendarDay } from '../web/format/instants';
import { countText, durationText } from '../web/format/numbers';
import { page, type PageContent } from '../web/http/answer';
import { Field } from '../web/parts/form';
import { Moment } from '../web/parts/instant';
import { Mark } from '../web/parts/mark';
import { EmptyState } from '../web/parts/notice';
import { DataTable } from '../web/parts/table';
import type { GameView } from './games.service';

export interface GamesPageProps {
  readonly slug: string;
  readonly language: string;
  readonly fromDate: string;
  readonly toDate: string;
  readonly games: readonly GameView[];
}

/** Games of some days. */
export function gamesPage({ slug, language, fromDate, toDate, games }: GamesPageProps): PageContent {
  const dates = [...new Set(games.map(({ game }) => game.localDate))].sort();
  return page({
    title: 'Games',
    body: (
      <>
        <h1>Games</h1>
        <form method="get" action={`/${slug}/games`} class="inline">
          <Field name="fromDate" label="From" type="date" value={fromDate} required />
          <Field name="toDate" label="To" type="date" value={toDate} required />
          <button type="submit">Show</button>
        </form>
        {games.length === 0 ? (
          <EmptyState>
            <p>No games on these days.</p>
            <p>Pick other days, or bring games in as a list.</p>
          </EmptyState>
        ) : (
          <p class="quiet">{countText(games.length, 'game', 'games')}</p>
        )}
        {dates.map((date) => (
          <DataTable<GameView>
            key={date}
            caption={calendarDay(date, language)}
            rows={games.filter(({ game }) => game.localDate === date)}
            keyOf={({ game }) => game.id}
            columns={[
              {
                name: 'Tip-off',
                cell: ({ game }) => <Moment at={game.startsAt} zone={game.timeZone} timeOnly />,
              },
              {
                name: 'Game',
                cell: ({ game, home, away }) => (
                  <a href={`/${slug}/games/${game.id}`}>
                    {home.name} – {away.name}
                  </a>
                ),
              },
              { name: 'Number', cell: ({ game }) => game.number },
              { name: 'Division', cell: ({ division }) => division.name },
              {
                name: 'Where',
                cell: ({ venue, court }) => (
                  <>
                    {venue.name},{' '}
                    {court === null ? <Mark state="attention">no court yet</Mark> : courtText(court.name)}
                  </>
                ),
              },
              { name: 'Status', cell: ({ game }) => <StatusMark status={game.status} /> },
            ]}
          />
        ))}
      </>
    ),
  });
}

/** One game as the competition has it. */
export function gamePage({ slug, view }: { slug: string; view: GameView }): PageContent {
  const { game, division, venue, court, home, away } = view;
  return page({
    title: `${home.name} – ${away.name}`,
    body: (
      <div class="narrow stack">
        <p class="trail">
          <a href={`/${slug}/games`}>Games</a>
        </p>
        <h1>
          {home.name} – {away.name}
        </h1>
        <dl class="pairs">
          <dt>Tip-off</dt>
          <dd>
            <Moment at={game.startsAt} zone={game.timeZone} /> <small>({game.timeZone})</small>
          </dd>
          <dt>Lasts</dt>
          <dd>{durationText(game.durationMinutes)}</dd>
          <dt>Status</dt>
          <dd>
            <StatusMark status={game.status} />
          </dd>
          <dt>Number</dt>
          <dd>{game.number}</dd>
          <dt>Division</dt>
          <dd>{division.name}</dd>
          <dt>Where</dt>
          <dd>
            <a href={`/${slug}/venues/${venue.id}`}>{venue.name}</a>,{' '}
            {court === null ? <Mark state="attention">no court yet</Mark> : courtText(court.name)}
          </dd>
          {game.note === '' ? null : (
            <>
              <dt>Note</dt>
              <dd>{game.note}</dd>
            </>
          )}
        </dl>
        <p>
          <a class="button" href={`/${slug}/games/${game.id}/briefing`}>
            Briefing
          </a>
        </p>
      </div>
    ),
  });
}

function StatusMark({ status }: { status: GameView['game']['status'] }) {
  switch (status) {
    case 'CONFIRMED':
      return <Mark state="accepted">confirmed</Mark>;
    case 'TENTATIVE':
      return <Mark state="asked">tentative</Mark>;
    case 'CANCELLED':
      return <Mark state="declined">cancelled</Mark>;
  }
}
