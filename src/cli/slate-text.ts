import { weekdayOf } from '../platform/calendar-day';
import { costTermWords } from '../slates/slate-figures';
import type { CrewGame, CrewSeat } from '../slates/slate-crews.query';
import type { SlateView } from '../slates/slate-view.query';
import { COST_TERMS } from '../solver';
import { textTable } from './text-table';

const weekdays = ['', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'];

/** A slate for a terminal: its games with their crews, then its figures, then what is in the way. */
export function slateText(view: SlateView): string {
  const { summary, games, review } = view;
  const rows = games.map((game) => [
    `${weekdays[weekdayOf(game.game.localDate)] ?? ''} ${game.game.localDate}`,
    game.game.localTime,
    game.game.number,
    [game.game.venue.name, game.game.court?.name].filter(Boolean).join(', '),
    game.game.division.code,
    `${game.game.home.name} – ${game.game.away.name}`,
    ...crewCells(game),
  ]);
  const header = ['Day', 'Time', 'Game', 'Court', 'Division', 'Teams', 'Chief', 'Umpire'];
  const reasons =
    review.reasons.length === 0
      ? []
      : ['', 'Cannot be published:', ...review.reasons.map((reason) => `  ${reason}`)];
  const faults =
    review.faults.length === 0
      ? []
      : ['', 'Worth mending:', ...review.faults.map((fault) => `  ${fault.message}`)];
  return [
    `${summary.name}: ${summary.fromDate} to ${summary.toDate}`,
    '',
    textTable(header, rows),
    '',
    figuresText(view),
    ...reasons,
    ...faults,
  ].join('\n');
}

/** The figures of a slate's working copy, a line each. */
export function figuresText({ summary, review, kilometres, bound }: SlateView): string {
  const { seats, unpublished } = summary;
  const { cost } = review;
  const quality = cost.total - cost.open;
  const gap = bound === null ? null : Math.max(0, cost.total - bound);
  const terms = COST_TERMS.filter((term) => cost[term] > 0).map(
    (term) => `${costTermWords[term]} ${cost[term].toFixed(1)}`,
  );
  const proven =
    gap === null
      ? 'nothing proven about the best possible'
      : quality > 0
        ? `at most ${gap.toFixed(1)} above the best possible (${((100 * gap) / quality).toFixed(2)} % of the cost without open seats)`
        : `at most ${gap.toFixed(1)} above the best possible`;
  const waiting = unpublished.added + unpublished.revised + unpublished.ended;
  const published =
    summary.published === null
      ? 'not published'
      : `published ${summary.published.number === 1 ? 'once' : `${summary.published.number} times`}`;
  return [
    `${summary.games} games; ${seats.filled} of ${seats.total} seats filled, ${seats.open} open` +
      (seats.keptOpen > 0 ? `, ${seats.keptOpen} kept open` : ''),
    `Cost ${cost.total.toFixed(1)}${terms.length > 0 ? ` (${terms.join(', ')})` : ''}`,
    `Bound: ${proven}`,
    ...(kilometres === null ? [] : [`Driving ${Math.round(kilometres)} km in all`]),
    `${published}${waiting > 0 ? `; publishing would tell ${waiting} changes (${unpublished.added} new, ${unpublished.revised} changed, ${unpublished.ended} ended)` : ''}`,
  ].join('\n');
}

function crewCells({ game, chief, umpire }: CrewGame): [string, string] {
  if (game.status === 'CANCELLED') return ['cancelled', ''];
  return [seatCell(chief), seatCell(umpire)];
}

function seatCell({ official, locked, told }: CrewSeat): string {
  if (official === null) return locked ? '(kept open)' : 'OPEN';
  const isTold = told?.official.id === official.id;
  const reply = !isTold ? 'not told' : told.reply === 'ACCEPTED' ? 'accepted' : 'no reply';
  return `${official.name} (${official.level}${locked ? ', locked' : ''}, ${reply})`;
}
