import { calendarDay } from '../web/format/instants';
import { seatState } from './seat-state';
import type { CrewSeat } from './slate-crews.query';
import { layWeekend, type FloorBar, type FloorDay, type FloorLane } from './weekend-layout';
import type { CrewGame } from './slate-crews.query';

// Units of the drawing, which are pixels at its smallest size.
const drawing = { width: 1160, nameWidth: 164, margin: 22, headHeight: 24, laneHeight: 72 };
/** Of one character, on average. */
const textWidth = 6.6;
const nameCharacters = Math.floor((drawing.nameWidth - 4) / 7.3);
const bar = { top: 8, height: 26, endRadius: 7, endGap: 18 };

/** The weekend as a picture: one floor a day, courts as lanes, each game a bar with the chief at its left end, the umpire at its right. */
export function WeekendFloor(props: { readonly games: readonly CrewGame[]; readonly language: string }) {
  return (
    <div class="stack">
      {layWeekend(props.games).map((day) => (
        <DayFloor key={day.date} day={day} name={calendarDay(day.date, props.language)} />
      ))}
      <Legend />
    </div>
  );
}

function DayFloor({ day, name }: { day: FloorDay; name: string }) {
  const height = drawing.headHeight + day.lanes.length * drawing.laneHeight + drawing.margin;
  const hours = Array.from({ length: day.toHour - day.fromHour + 1 }, (_, index) => day.fromHour + index);
  const games = day.lanes.reduce((sum, lane) => sum + lane.bars.length, 0);
  return (
    <figure class="stack">
      <figcaption>
        <h3>{name}</h3>
      </figcaption>
      <div
        class="floor"
        role="region"
        aria-label={`Picture of ${name}; the same is in the table below`}
        tabIndex={0}
      >
        <svg
          viewBox={`0 0 ${drawing.width} ${height}`}
          role="img"
          aria-label={`${games} games on ${day.lanes.length} lanes, ${clock(day.fromHour)} to ${clock(day.toHour)}`}
        >
          {hours.map((hour) => {
            const x = xOf(day, hour * 60);
            return (
              <g key={hour}>
                <path class="hour" d={`M${x} ${drawing.headHeight - 4}V${height - drawing.margin / 2}`} />
                <text class="hour-name" x={x} y="14" text-anchor="middle">
                  {clock(hour)}
                </text>
              </g>
            );
          })}
          {day.lanes.map((lane, index) => (
            <Lane
              key={lane.key}
              day={day}
              lane={lane}
              y={drawing.headHeight + index * drawing.laneHeight}
              isNewVenue={day.lanes[index - 1]?.venueName !== lane.venueName}
            />
          ))}
        </svg>
      </div>
    </figure>
  );
}

function Lane(props: { day: FloorDay; lane: FloorLane; y: number; isNewVenue: boolean }) {
  const { day, lane, y, isNewVenue } = props;
  return (
    <g>
      {isNewVenue ? <path class="side" d={`M0 ${y}H${drawing.width}`} /> : null}
      <text class="lane-name" x="10" y={y + 20}>
        {isNewVenue ? short(lane.venueName, nameCharacters) : ''}
        <title>{`${lane.venueName}, ${lane.courtName}`}</title>
      </text>
      <text class="lane-venue" x="10" y={y + 36}>
        {short(lane.courtName, nameCharacters)}
      </text>
      {lane.bars.map((game) => (
        <GameBar
          key={game.crew.game.id}
          bar={game}
          left={xOf(day, game.startMinute)}
          right={xOf(day, game.endMinute)}
          y={y}
        />
      ))}
    </g>
  );
}

function GameBar({
  bar: { crew },
  left,
  right,
  y,
}: {
  bar: FloorBar;
  left: number;
  right: number;
  y: number;
}) {
  const { game, chief, umpire } = crew;
  const from = left + 3 + (chief.official === null ? bar.endGap : 0);
  const to = right - 3 - (umpire.official === null ? bar.endGap : 0);
  const middle = y + bar.top + bar.height / 2;
  const title = [
    `${game.localTime} ${game.division.name}: ${game.home.name} against ${game.away.name}, game ${game.number}`,
    game.status === 'CANCELLED' ? 'cancelled' : '',
    `Crew chief: ${seatWords(chief)}`,
    `Umpire: ${seatWords(umpire)}`,
  ];
  return (
    <g class={game.status === 'CANCELLED' ? 'cancelled' : undefined}>
      <title>{title.filter((line) => line !== '').join('\n')}</title>
      <rect class="bar" x={from} y={y + bar.top} width={Math.max(0, to - from)} height={bar.height} rx="3" />
      <text class="teams" x={(left + right) / 2} y={middle + 4} text-anchor="middle">
        {fitting(
          [
            `${game.division.code} ${game.home.code}–${game.away.code}`,
            `${game.home.code}–${game.away.code}`,
            game.division.code,
          ],
          Math.floor((right - left - 84) / textWidth),
        )}
      </text>
      <End seat={chief} x={left + 3 + bar.endRadius} y={middle} inward={1} />
      <End seat={umpire} x={right - 3 - bar.endRadius} y={middle} inward={-1} />
      <Person seat={chief} x={left + 4} y={y + 48} anchor="start" width={right - left} />
      <Person seat={umpire} x={right - 4} y={y + 63} anchor="end" width={right - left} />
    </g>
  );
}

/** One end of a bar: who sits there, how things stand, and the level as a stack of ticks. */
function End({ seat, x, y, inward }: { seat: CrewSeat; x: number; y: number; inward: 1 | -1 }) {
  const { mark } = seatState(seat);
  const shape = mark === 'declined' ? 'open' : mark;
  const tickFrom = x + inward * (bar.endRadius + 4);
  const bracket = x - inward * (bar.endRadius + 3);
  return (
    <>
      <circle class={`end ${shape}`} cx={x} cy={y} r={bar.endRadius - 1} />
      {mark === 'declined' ? <path class="cut" d={`M${x - 6} ${y + 6}L${x + 6} ${y - 6}`} /> : null}
      {seat.locked ? (
        <path class="bracket" d={`M${bracket + inward * 4} ${y - 9}H${bracket}V${y + 9}h${inward * 4}`} />
      ) : null}
      {seat.official === null
        ? null
        : Array.from({ length: Math.min(8, seat.official.level) }, (_, step) => (
            <path key={step} class="tick" d={`M${tickFrom} ${y + 10 - step * 3}h${inward * 9}`} />
          ))}
    </>
  );
}

function Person(props: { seat: CrewSeat; x: number; y: number; anchor: 'start' | 'end'; width: number }) {
  const { official, locked } = props.seat;
  const text =
    official === null
      ? locked
        ? 'kept open'
        : 'open'
      : `${official.givenName.slice(0, 1)}. ${official.familyName}`;
  return (
    <text
      class={official === null ? 'person open' : 'person'}
      x={props.x}
      y={props.y}
      text-anchor={props.anchor}
    >
      {short(text, Math.floor(props.width / textWidth))}
    </text>
  );
}

function Legend() {
  return (
    <ul class="legend" aria-hidden="true">
      <li>left end: crew chief</li>
      <li>right end: umpire</li>
      <li>stack of ticks: level</li>
      <li>broken ring: open</li>
      <li>ring cut through: declined</li>
      <li>ring: not told yet</li>
      <li>dotted ring: no answer yet</li>
      <li>full: accepted</li>
      <li>bracket: locked</li>
    </ul>
  );
}

function seatWords(seat: CrewSeat): string {
  const { words } = seatState(seat);
  return seat.official === null ? words : `${seat.official.name} (${seat.official.levelName}), ${words}`;
}

function xOf(day: FloorDay, minute: number): number {
  const span = (day.toHour - day.fromHour) * 60;
  const width = drawing.width - drawing.nameWidth - 2 * drawing.margin;
  const x = drawing.nameWidth + drawing.margin + ((minute - day.fromHour * 60) / span) * width;
  return Math.round(x * 10) / 10;
}

function clock(hour: number): string {
  return `${String(hour % 24).padStart(2, '0')}:00`;
}

/** The longest of these texts that fits, the last one cut where none does. */
function fitting(texts: readonly [string, ...string[]], characters: number): string {
  return texts.find((text) => text.length <= characters) ?? short(texts.at(-1) ?? '', characters);
}

/** Cuts what does not fit; the whole of it is in the title and in the table. */
function short(text: string, characters: number): string {
  return text.length <= characters ? text : `${text.slice(0, Math.max(1, characters - 1))}…`;
}
