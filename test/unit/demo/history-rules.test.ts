// Goal: the demo's past crews are legal whatever day it is loaded, and look like a season. Method: every hard rule of the slate
// problem judged anew from the CSV files alone, on the wall clock, with nothing of the solver, the mapping or the importers; a
// night is counted an hour short, as it may be in spring.
import { parse } from 'csv-parse/sync';
import { readFileSync } from 'node:fs';
import { withDates } from '../../../src/demo/relative-dates';

type Row = Record<string, string>;
const arrival = 20;
const wrapUp = 15;
const sameVenueGap = 10;
const restMinutes = 11 * 60;

const rowsOf = (name: string, today: string): Row[] =>
  parse(withDates(readFileSync(`seed/${name}.csv`, 'utf8'), today), { columns: true });
const by = (rows: Row[], column: string) => new Map(rows.map((row) => [row[column] ?? '', row]));
const minutes = (time = '') => Number(time.slice(0, 2)) * 60 + Number(time.slice(3, 5));
const dayNumber = (date = '') => Date.parse(`${date}T00:00:00Z`) / 86_400_000;

function drive(from: Row, to: Row): number {
  const rad = (degrees = '') => (Number(degrees) * Math.PI) / 180;
  const [p, q] = [rad(from['lat']), rad(to['lat'])];
  // By the spherical law of cosines, which the product does not use.
  const angle = Math.acos(
    Math.min(
      1,
      Math.sin(p) * Math.sin(q) + Math.cos(p) * Math.cos(q) * Math.cos(rad(to['lon']) - rad(from['lon'])),
    ),
  );
  return 4 + Math.ceil(Math.round(1.3 * 6_371_008.8 * angle) / 1000);
}

interface Work {
  readonly game: Row;
  readonly day: number;
  readonly from: number;
  readonly to: number;
}

function isFree(rules: Row[], { day, from, to }: Work): boolean {
  const applies = (rule: Row) => {
    const first = dayNumber(rule['date']);
    if ((rule['except'] ?? '').split('|').some((date) => date !== '' && dayNumber(date) === day))
      return false;
    if (rule['repeat'] === '') return day === first;
    if (rule['until'] !== '' && day > dayNumber(rule['until'])) return false;
    const daily = rule['repeat'] === 'FREQ=WEEKLY;BYDAY=SA,SU' ? [0, 1] : [0];
    return day >= first && daily.includes((day - first) % 7);
  };
  const today = rules
    .filter(applies)
    .map((rule) => ({ kind: rule['kind'], start: minutes(rule['from']), end: minutes(rule['to']) }));
  const isBusy = today.some(({ kind, start, end }) => kind === 'busy' && start < to && from < end);
  // No rule of the demo's past reaches past midnight, and none is cut in two that a duty would need whole.
  return !isBusy && today.some(({ kind, start, end }) => kind !== 'busy' && start <= from && to <= end);
}

describe.each(['2026-11-25', '2027-04-04', '2028-03-01', '2026-01-03'])('on %s', (today) => {
  const officials = by(rowsOf('officials', today), 'number');
  const games = by(rowsOf('games', today), 'number');
  const venues = by(rowsOf('venues', today), 'code');
  const divisions = by(rowsOf('divisions', today), 'code');
  const crews = rowsOf('crews', today);
  const rules = rowsOf('availability', today);
  const conflicts = rowsOf('conflicts', today);
  const legs = rowsOf('travel-legs', today);

  const minutesBetween = (from: string, to: string, ends: [Row, Row]) => {
    const leg =
      legs.find((row) => row['from'] === from && row['to'] === to) ??
      legs.find((row) => row['from'] === to && row['to'] === from);
    return leg === undefined ? drive(...ends) : Number(leg['minutes']);
  };
  const workOf = (game: Row): Work => {
    const start = minutes(game['time']);
    const length = Number(divisions.get(game['division'] ?? '')?.['game_minutes']);
    return { game, day: dayNumber(game['date']), from: start - arrival, to: start + length + wrapUp };
  };
  const known = <T>(value: T | undefined): T => {
    if (value === undefined) throw new Error('a reference leads nowhere');
    return value;
  };
  const level = (official: Row) => Number(official['level']);
  const isMinor = (official: Row, date: string) => {
    const birth = official['birth_date'] ?? '';
    return `${Number(birth.slice(0, 4)) + 18}${birth.slice(4)}` > date;
  };

  const crewRows = crews.map((crew) => ({
    game: known(games.get(crew['game'] ?? '')),
    chief: known(officials.get(crew['chief'] ?? '')),
    umpire: known(officials.get(crew['umpire'] ?? '')),
  }));

  test('every past game that was played has a full crew, and no other has one', () => {
    const past = [...games.values()].filter(
      (game) => (game['date'] ?? '') < today && game['status'] !== 'CANCELLED',
    );
    expect(past.length).toBeGreaterThan(400);
    expect(crewRows.map(({ game }) => game['number']).sort()).toEqual(
      past.map((game) => game['number']).sort(),
    );
  });

  test('seats, levels and order (H1, H9), minors (H8), conflicts (H5)', () => {
    let withMinor = 0;
    for (const { game, chief, umpire } of crewRows) {
      const division = known(divisions.get(game['division'] ?? ''));
      const about = `${game['number']} ${chief['number']} ${umpire['number']}`;
      const minors = [chief, umpire].filter((official) => isMinor(official, game['date'] ?? '')).length;
      withMinor += minors;
      expect({ about, minors: minors < 2 }).toEqual({ about, minors: true });
      expect({
        about,
        two: chief !== umpire,
        mayBeChief: chief['may_be_chief'],
        chiefLevel: level(chief) >= Number(division['chief_min_level']),
        umpireLevel: level(umpire) >= Number(division['umpire_min_level']),
        order: level(chief) >= level(umpire),
      }).toEqual({ about, two: true, mayBeChief: 'yes', chiefLevel: true, umpireLevel: true, order: true });
      for (const [self, other] of [
        [chief, umpire],
        [umpire, chief],
      ]) {
        const broken = conflicts.filter(
          (row) =>
            row['official'] === self?.['number'] &&
            ([game['home'], game['away']].includes(row['team'] || 'none') ||
              row['venue'] === game['venue'] ||
              row['other_official'] === other?.['number']),
        );
        expect({ about, broken }).toEqual({ about, broken: [] });
      }
    }
    expect(withMinor).toBeGreaterThan(20);
  });

  test('free (H2), within reach (H7), not too many (H4), able to get there (H3), rested (H10)', () => {
    for (const [number, official] of officials) {
      const own = rules.filter((rule) => rule['official'] === number);
      const works = crewRows
        .filter(({ chief, umpire }) => chief === official || umpire === official)
        .map(({ game }) => workOf(game))
        .sort((a, b) => a.day - b.day || a.from - b.from);
      const home = (venue: Row) => minutesBetween(`home:${number}`, venue['code'] ?? '', [official, venue]);
      const venueOf = (work: Work) => known(venues.get(work.game['venue'] ?? ''));
      for (const work of works) {
        const about = `${number} ${work.game['number']}`;
        expect({ about, free: isFree(own, work) }).toEqual({ about, free: true });
        expect(home(venueOf(work))).toBeLessThanOrEqual(Number(official['max_home_minutes']));
      }
      works.slice(1).forEach((later, index) => {
        const earlier = known(works[index]);
        const [from, to] = [venueOf(earlier), venueOf(later)];
        const about = `${number} ${earlier.game['number']} ${later.game['number']}`;
        if (earlier.day === later.day) {
          const spare =
            from === to
              ? later.from + arrival - (earlier.to - wrapUp) - sameVenueGap
              : later.from - earlier.to - minutesBetween(from['code'] ?? '', to['code'] ?? '', [from, to]);
          expect({ about, inTime: spare >= 0 }).toEqual({ about, inTime: true });
        } else {
          const night =
            (later.day - earlier.day) * 1440 + later.from - earlier.to - home(from) - home(to) - 60;
          expect({ about, rested: night >= restMinutes }).toEqual({ about, rested: true });
        }
      });
      const perDay = new Map<number, number>();
      const perWeekend = new Map<number, number>();
      for (const { day } of works) {
        perDay.set(day, (perDay.get(day) ?? 0) + 1);
        // Day 0, 1 January 1970, was a Thursday: weekends begin on day 2.
        const weekend = Math.floor((day - 2) / 7);
        perWeekend.set(weekend, (perWeekend.get(weekend) ?? 0) + 1);
      }
      expect(Math.max(0, ...perDay.values())).toBeLessThanOrEqual(Number(official['max_games_per_day']));
      expect(Math.max(0, ...perWeekend.values())).toBeLessThanOrEqual(
        Number(official['max_games_per_slate']),
      );
    }
  });
});
