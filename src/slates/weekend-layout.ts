import { courtText } from '../places/court-text';
import type { CrewGame } from './slate-crews.query';

/** One game as a bar on its lane; minutes count from midnight by the clock of the venue. */
export interface FloorBar {
  readonly crew: CrewGame;
  readonly startMinute: number;
  readonly endMinute: number;
}

/** One court on one day. */
export interface FloorLane {
  readonly key: string;
  readonly venueName: string;
  readonly courtName: string;
  /** By tip-off; two that overlap, which a list of games may well say, lie on lanes of their own. */
  readonly bars: readonly FloorBar[];
}

/** One day of the weekend picture. */
export interface FloorDay {
  /** `YYYY-MM-DD`, local to the venues. */
  readonly date: string;
  /** Whole hours that the picture spans; the end may lie beyond 24. */
  readonly fromHour: number;
  readonly toHour: number;
  readonly lanes: readonly FloorLane[];
}

/** Lays the games of a slate out: days below each other, courts as lanes by venue, time across. */
export function layWeekend(games: readonly CrewGame[]): FloorDay[] {
  const dates = [...new Set(games.map(({ game }) => game.localDate))].sort();
  return dates.map((date) => {
    const bars = games.filter(({ game }) => game.localDate === date).map(barOf);
    return {
      date,
      fromHour: Math.floor(Math.min(...bars.map((bar) => bar.startMinute)) / 60),
      toHour: Math.ceil(Math.max(...bars.map((bar) => bar.endMinute)) / 60),
      lanes: lanesOf(bars),
    };
  });
}

function barOf(crew: CrewGame): FloorBar {
  const [hours = 0, minutes = 0] = crew.game.localTime.split(':').map(Number);
  const startMinute = hours * 60 + minutes;
  return { crew, startMinute, endMinute: startMinute + crew.game.durationMinutes };
}

function lanesOf(bars: readonly FloorBar[]): FloorLane[] {
  const byCourt = new Map<string, FloorBar[]>();
  for (const bar of bars) {
    const { venue, court } = bar.crew.game;
    // Sorted by name, so that the courts of a venue lie together; the ids keep two of one name apart.
    const key = JSON.stringify([venue.name, court?.name ?? '', venue.id, court?.id ?? '']);
    byCourt.set(key, [...(byCourt.get(key) ?? []), bar]);
  }
  return [...byCourt.entries()]
    .sort(([left], [right]) => left.localeCompare(right, 'en', { numeric: true }))
    .flatMap(([key, ofCourt]) =>
      apart(ofCourt).map((ofLane, index) => {
        const { venue, court } = ofCourt[0]?.crew.game ?? { venue: { name: '' }, court: null };
        return {
          key: `${key}${index}`,
          venueName: venue.name,
          courtName: court === null ? 'no court yet' : courtText(court.name),
          bars: ofLane,
        };
      }),
    );
}

/** Spreads bars over as few lanes as keep them from overlapping. */
function apart(bars: readonly FloorBar[]): FloorBar[][] {
  const lanes: FloorBar[][] = [];
  for (const bar of [...bars].sort((left, right) => left.startMinute - right.startMinute)) {
    const free = lanes.find((lane) => (lane.at(-1)?.endMinute ?? 0) <= bar.startMinute);
    if (free === undefined) lanes.push([bar]);
    else free.push(bar);
  }
  return lanes;
}
