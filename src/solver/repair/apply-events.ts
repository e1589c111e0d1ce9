import { type Assignment } from '../answer';
import { type Game, type Official, type SlateProblem, type TimeWindow } from '../problem';
import { type SlateEvent } from './events';

/**
 * What became of a problem: the events applied in their order, and as `published` exactly the seats of the
 * published slate (whatever stood there before). Games that were cancelled are gone; games that were added
 * have nobody published. The events must have been accepted by `readEvents` for this problem.
 */
export function applyEvents(
  problem: SlateProblem,
  published: readonly Assignment[],
  events: readonly SlateEvent[],
): SlateProblem {
  const assignmentByGame = new Map(published.map((assignment) => [assignment.game, assignment]));
  const start: SlateProblem = {
    ...problem,
    games: problem.games.map((game) => withPublished(game, assignmentByGame.get(game.id))),
  };
  return events.reduce(applyEvent, start);
}

function withPublished(game: Game, assignment: Assignment | undefined): Game {
  const { published: _, ...rest } = game;
  const { chief = null, umpire = null } = assignment ?? {};
  if (chief === null && umpire === null) return rest;
  const seats = { ...(chief === null ? {} : { chief }), ...(umpire === null ? {} : { umpire }) };
  return { ...rest, published: seats };
}

function applyEvent(problem: SlateProblem, event: SlateEvent): SlateProblem {
  const changeGame = (id: string, change: Partial<Game>) => ({
    ...problem,
    games: problem.games.map((game) => (game.id === id ? { ...game, ...change } : game)),
  });
  const changeOfficial = (id: string, change: (official: Official) => Partial<Official>) => ({
    ...problem,
    officials: problem.officials.map((official) =>
      official.id === id ? { ...official, ...change(official) } : official,
    ),
  });
  switch (event.kind) {
    case 'officialOut':
      return changeOfficial(event.official, ({ available }) => ({
        available: withoutSpan(available, event),
      }));
    case 'gameMoved': {
      const { tipOff, durationMinutes } = event;
      return changeGame(event.game, {
        tipOff,
        ...(durationMinutes === undefined ? {} : { durationMinutes }),
      });
    }
    case 'venueChanged':
      return changeGame(event.game, { venue: event.venue });
    case 'gameAdded':
      return { ...problem, games: [...problem.games, event.game] };
    case 'gameCancelled':
      return { ...problem, games: problem.games.filter((game) => game.id !== event.game) };
    case 'limitsChanged':
      return changeOfficial(event.official, () => event.limits);
    case 'placeAdded':
      return { ...problem, places: [...problem.places, event.place] };
  }
}

/** What is left of the windows outside the span; an end that is not given lies beyond all of them. */
function withoutSpan(
  windows: readonly TimeWindow[],
  { from, to }: { readonly from?: string; readonly to?: string },
): readonly TimeWindow[] {
  const fromMs = from === undefined ? -Infinity : Date.parse(from);
  const toMs = to === undefined ? Infinity : Date.parse(to);
  return windows.flatMap((window) => {
    if (Date.parse(window.to) <= fromMs || toMs <= Date.parse(window.from)) return [window];
    const before =
      from !== undefined && Date.parse(window.from) < fromMs ? [{ from: window.from, to: from }] : [];
    const after = to !== undefined && toMs < Date.parse(window.to) ? [{ from: to, to: window.to }] : [];
    return [...before, ...after];
  });
}
