// Writes seed/games.csv: ten past weekends and two coming ones of the demo association, from its divisions and teams. Run it
// after `npm run build` as `node dist/test/support/demo/generate-games.js`; the same lists always give the same games.
import { readFileSync, writeFileSync } from 'node:fs';
import { readCsv } from '../../../src/platform/csv/read-csv';
import { writeCsv } from '../../../src/platform/csv/write-csv';

interface Fixture {
  readonly division: string;
  readonly day: 'SAT' | 'SUN';
  readonly home: string;
  readonly away: string;
  /** Code of the hall of a festival; else the home team's is used. */
  readonly festivalHall: string | null;
}

const weeks = [-10, -9, -8, -7, -6, -5, -4, -3, -2, -1, 1, 2];
/**
 * Youngest first: their games begin the day. A festival, at which the four teams of a division all play each other, is held in a
 * hall with two courts; grown-ups do not begin before `from` o'clock.
 */
const divisions: readonly {
  readonly code: string;
  readonly rounds: readonly ('SAT' | 'SUN')[];
  readonly festivalHalls?: readonly string[];
  readonly from?: number;
}[] = [
  { code: 'U12', rounds: ['SAT', 'SAT', 'SAT'], festivalHalls: ['SEA-A', 'SAL-H'] },
  { code: 'U14', rounds: ['SUN', 'SUN', 'SUN'], festivalHalls: ['WRA-H', 'SEA-A'] },
  { code: 'U16G', rounds: ['SAT', 'SUN'] },
  { code: 'U16B', rounds: ['SAT', 'SUN'] },
  { code: 'U18', rounds: ['SAT', 'SUN'] },
  { code: 'W1', rounds: ['SAT', 'SUN'], from: 13 },
  { code: 'S2', rounds: ['SAT', 'SUN'], from: 14 },
  { code: 'S1', rounds: ['SAT', 'SUN'], from: 16 },
];

const changeoverMinutes = 15;
const openingMinutes = 10 * 60;

function column(name: string, fields: readonly string[]): string[][] {
  const bytes = readFileSync(`seed/${name}.csv`);
  const head = bytes.toString('utf8').split('\n', 1)[0]?.split(',') ?? [];
  const { rows, faults } = readCsv(
    name,
    bytes,
    head.map((field) => ({ name: field, required: true })),
  );
  if (faults.length > 0) throw new Error(faults.map(({ message }) => message).join('\n'));
  return rows.map((row) => fields.map((field) => row.cells.get(field) ?? ''));
}

const teams = column('teams', ['code', 'division']);
const minutesOf = new Map(
  column('divisions', ['code', 'game_minutes']).map(([code, minutes]) => [code, Number(minutes)]),
);
const halls = column('venues', ['code', 'courts']).map(([code = '', courts = '']) => ({
  code,
  courts: courts.split('|'),
}));
const clubOf = (team: string) => team.slice(0, 3);

/** The circle method: round `round` of a double round robin, home and away exchanged in every second cycle. */
function pairings(members: readonly string[], round: number): [home: string, away: string][] {
  const [fixed = '', ...others] = members;
  const turn = round % others.length;
  const circle = [fixed, ...others.slice(turn), ...others.slice(0, turn)];
  const isReturn = Math.floor(round / others.length) % 2 === 1;
  return Array.from({ length: members.length / 2 }, (_, index) => {
    const pair: [string, string] = [circle[index] ?? '', circle[circle.length - 1 - index] ?? ''];
    const isTurned = (index + (index === 0 ? round : 0)) % 2 === 1;
    return isTurned === isReturn ? pair : [pair[1], pair[0]];
  });
}

function fixturesOf(weekIndex: number): Fixture[] {
  return divisions.flatMap(({ code, rounds, festivalHalls }) => {
    const members = teams.filter(([, division]) => division === code).map(([team = '']) => team);
    const festivalHall = festivalHalls?.[weekIndex % festivalHalls.length] ?? null;
    return rounds.flatMap((day, index) => {
      // Not every division plays every day of the season.
      const isOff =
        day === 'SUN' &&
        ((code === 'U16G' && weekIndex % 3 === 1) || (code === 'U18' && weekIndex % 5 === 2));
      return pairings(members, weekIndex * rounds.length + index)
        .filter(() => !isOff)
        .map(([home, away]) => ({ division: code, day, home, away, festivalHall }));
    });
  });
}

/** The hall of a game: of Seagrass Quay's two the school hall for the young, the arena for the others. */
function hallOf({ home, division, festivalHall }: Fixture): { code: string; courts: readonly string[] } {
  const own = halls.filter(({ code }) =>
    festivalHall === null ? code.startsWith(clubOf(home)) : code === festivalHall,
  );
  const isYoung = ['U16B', 'U16G'].includes(division);
  const hall = own.length > 1 ? own.find(({ code }) => code.endsWith('S') === isYoung) : own[0];
  if (hall === undefined) throw new Error(`No hall for ${home}.`);
  return festivalHall === null ? hall : { code: hall.code, courts: hall.courts.slice(0, 2) };
}

/** Courts are filled one game after the other; of several courts the one that is free first. */
function scheduled(
  fixtures: readonly Fixture[],
): { fixture: Fixture; venue: string; court: string; time: string }[] {
  const freeFrom = new Map<string, number>();
  return fixtures.map((fixture) => {
    const hall = hallOf(fixture);
    // Halls do not all begin at the same minute.
    const offset = 15 * (halls.findIndex(({ code }) => code === hall.code) % 4);
    const earliest = offset + (divisions.find(({ code }) => code === fixture.division)?.from ?? 0) * 60;
    const slots = hall.courts.map((court) => {
      const key = `${hall.code} ${court} ${fixture.day}`;
      return { court, key, from: Math.max(freeFrom.get(key) ?? openingMinutes + offset, earliest) };
    });
    const slot = slots.reduce((best, other) => (other.from < best.from ? other : best));
    const length = minutesOf.get(fixture.division) ?? 0;
    freeFrom.set(slot.key, Math.ceil((slot.from + length + changeoverMinutes) / 15) * 15);
    const two = (number: number) => String(number).padStart(2, '0');
    const time = `${two(Math.floor(slot.from / 60))}:${two(slot.from % 60)}`;
    return { fixture, venue: hall.code, court: slot.court, time };
  });
}

/** What is out of the ordinary, by week and running number within it. */
const oddities: Readonly<Record<string, { readonly status?: string; readonly note?: string }>> = {
  '-6 21': { status: 'CANCELLED', note: 'Hall flooded; not to be repeated.' },
  '1 12': { status: 'TENTATIVE', note: 'The visitors may ask for another time.' },
  '2 40': { note: 'Ceremony before the game: teams are presented at T-12.' },
};

const rows: string[][] = [];
weeks.forEach((week, weekIndex) => {
  const games = scheduled(fixturesOf(weekIndex));
  const relative = (day: string) => `W${week > 0 ? '+' : ''}${week} ${day}`;
  games.forEach(({ fixture, venue, court, time }, index) => {
    const { status = 'CONFIRMED', note = '' } = oddities[`${week} ${index}`] ?? {};
    const number = `MC-${String(rows.length + 1).padStart(3, '0')}`;
    rows.push([
      number,
      fixture.division,
      venue,
      court,
      relative(fixture.day),
      time,
      fixture.home,
      fixture.away,
      status,
      note,
    ]);
  });
  if (week === 2) {
    // Two wishes for the same court at the same time, and both are wanted: somebody must decide.
    const note = 'Asked for by two clubs: see the other game on this court.';
    rows.push([
      'MC-901',
      'U18',
      'SEA-A',
      '3',
      relative('SUN'),
      '18:00',
      'SEA-U18',
      'LOW-U18',
      'TENTATIVE',
      note,
    ]);
    rows.push([
      'MC-902',
      'U16B',
      'SEA-A',
      '3',
      relative('SUN'),
      '18:30',
      'SEA-U16B',
      'SAL-U16B',
      'TENTATIVE',
      note,
    ]);
  }
});
const head = ['number', 'division', 'venue', 'court', 'date', 'time', 'home', 'away', 'status', 'note'];
writeFileSync('seed/games.csv', writeCsv(head, rows).replaceAll('\r\n', '\n'));
process.stdout.write(`${rows.length} games\n`);
