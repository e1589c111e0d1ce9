import { courtText } from '../places/court-text';
import { calendarDay } from '../web/format/instants';
import { LevelTicks } from '../web/parts/level-ticks';
import { Mark } from '../web/parts/mark';
import { DataTable } from '../web/parts/table';
import { seatState } from './seat-state';
import type { CrewGame, CrewSeat } from './slate-crews.query';

/** The table twin of the weekend picture: each day's games with their crews. */
export function CrewTables(props: {
  readonly games: readonly CrewGame[];
  readonly language: string;
  readonly slug: string;
}) {
  const dates = [...new Set(props.games.map(({ game }) => game.localDate))].sort();
  return (
    <div class="stack">
      {dates.map((date) => (
        <DataTable
          key={date}
          caption={calendarDay(date, props.language)}
          rows={props.games.filter(({ game }) => game.localDate === date)}
          keyOf={({ game }) => game.id}
          columns={[
            {
              name: 'Tip-off',
              cell: ({ game }) => (
                <span class="nowrap">
                  <time dateTime={game.startsAt.toISOString()}>{game.localTime}</time>
                  {game.status === 'CONFIRMED' ? null : <> {game.status.toLowerCase()}</>}
                </span>
              ),
            },
            {
              name: 'Game',
              cell: ({ game }) => (
                <>
                  {game.home.name} – {game.away.name}
                  <br />
                  <small>
                    {game.division.name}, {game.number}
                  </small>
                </>
              ),
            },
            {
              name: 'Where',
              cell: ({ game }) => (
                <>
                  <a href={`/${props.slug}/venues/${game.venue.id}`}>{game.venue.name}</a>
                  <br />
                  <small>{game.court === null ? 'no court yet' : courtText(game.court.name)}</small>
                </>
              ),
            },
            { name: 'Crew chief', cell: ({ chief }) => <SeatCell seat={chief} slug={props.slug} /> },
            { name: 'Umpire', cell: ({ umpire }) => <SeatCell seat={umpire} slug={props.slug} /> },
          ]}
        />
      ))}
    </div>
  );
}

function SeatCell({ seat, slug }: { seat: CrewSeat; slug: string }) {
  const { mark, words } = seatState(seat);
  if (seat.official === null) {
    return (
      <b>
        <Mark state={mark}>{words}</Mark>
      </b>
    );
  }
  return (
    <>
      <a href={`/${slug}/officials/${seat.official.id}`}>{seat.official.name}</a>{' '}
      <LevelTicks level={seat.official.level} name={seat.official.levelName} />
      <br />
      <small>
        <Mark state={mark}>{words}</Mark>
        {seat.locked && mark !== 'locked' ? ', locked' : ''}
      </small>
    </>
  );
}
