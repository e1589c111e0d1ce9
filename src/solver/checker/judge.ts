import { type RuleId, type Violation } from '../answer';
import { type Official } from '../problem';
import { type Crew, type Season, type TimedGame, type Tours } from './season';

const MINUTE = 60_000;

/** Every hard rule that the crews break, one check after another from the definition. */
export function violationsOf(season: Season, crews: readonly Crew[], tours: Tours): Violation[] {
  const found: Violation[] = [];
  const note = (rule: RuleId, game: string | null, officials: readonly string[], message: string) =>
    found.push({ rule, game, officials, message });
  season.games.forEach((timed, index) => {
    const crew = crews[index]!;
    checkLocks(timed, crew, note);
    for (const seat of ['chief', 'umpire'] as const) {
      const official = crew[seat];
      if (official !== null) checkSeat(season, timed, seat, official, note);
    }
    checkCrew(timed, crew, note);
  });
  const seatsByOfficial = countSeats(crews);
  for (const [official, days] of tours) checkLoad(seatsByOfficial.get(official)!, official, days, note);
  for (const [official, days] of tours) checkTimes(season, official, days, note);
  return found;
}

type Note = (rule: RuleId, game: string | null, officials: readonly string[], message: string) => void;
type Days = ReadonlyMap<string, readonly TimedGame[]>;

function checkLocks({ game }: TimedGame, crew: Crew, note: Note): void {
  for (const seat of ['chief', 'umpire'] as const) {
    const lock = game.locked?.[seat];
    const holder = crew[seat]?.id ?? null;
    if (lock === undefined || lock === holder) continue;
    note(
      'H6',
      game.id,
      [lock, holder].filter((id) => id !== null),
      `${seat} is locked to ${lock ?? 'nobody'}, not ${holder ?? 'nobody'}`,
    );
  }
}

function checkSeat(
  season: Season,
  timed: TimedGame,
  seat: 'chief' | 'umpire',
  official: Official,
  note: Note,
): void {
  const { game, division } = timed;
  const say = (rule: RuleId, message: string) => note(rule, game.id, [official.id], message);
  const minLevel = seat === 'chief' ? division.chiefMinLevel : division.umpireMinLevel;
  if (seat === 'chief' && !official.mayBeChief) say('H1', 'is not allowed to be chief');
  if (official.level < minLevel)
    say('H1', `level ${official.level} is under the required ${minLevel} for the ${seat}`);
  if (!coversDuty(official, timed)) say('H2', 'the duty is not inside an availability window');
  for (const team of new Set([game.home, game.away])) {
    if (official.avoidTeams?.includes(team)) say('H5', `must not see team ${team}`);
  }
  if (official.avoidVenues?.includes(game.venue)) say('H5', `must not go to ${game.venue}`);
  const { minutes } = season.ways(official.home, game.venue);
  if (minutes > official.maxHomeMinutes)
    say('H7', `lives ${minutes} minutes away, limit ${official.maxHomeMinutes}`);
}

/** Walks the windows in order and lets the covered time grow as long as they touch. */
function coversDuty(official: Official, { dutyFrom, dutyTo }: TimedGame): boolean {
  const windows = official.available
    .map(({ from, to }) => ({ from: Date.parse(from), to: Date.parse(to) }))
    .sort((a, b) => a.from - b.from);
  let coveredFrom = -Infinity;
  let coveredTo = -Infinity;
  for (const { from, to } of windows) {
    if (from > coveredTo) coveredFrom = from;
    coveredTo = Math.max(coveredTo, to);
    if (coveredFrom <= dutyFrom && dutyTo <= coveredTo) return true;
  }
  return false;
}

function checkCrew({ game }: TimedGame, { chief, umpire }: Crew, note: Note): void {
  if (chief === null || umpire === null) {
    const alone = chief ?? umpire;
    if (alone?.minor) note('H8', game.id, [alone.id], 'a minor without a partner');
    return;
  }
  const both = [chief.id, umpire.id];
  if (chief.id === umpire.id) note('H1', game.id, [chief.id], 'one person in both seats');
  if (chief.avoidOfficials?.includes(umpire.id) || umpire.avoidOfficials?.includes(chief.id)) {
    note('H5', game.id, both, 'must not work together');
  }
  if (chief.minor && umpire.minor) note('H8', game.id, both, 'two minors');
  if (chief.level < umpire.level)
    note('H9', game.id, both, `chief at level ${chief.level} under umpire at ${umpire.level}`);
}

function countSeats(crews: readonly Crew[]): Map<Official, number> {
  const seats = new Map<Official, number>();
  for (const official of crews.flatMap(({ chief, umpire }) => [chief, umpire])) {
    if (official !== null) seats.set(official, (seats.get(official) ?? 0) + 1);
  }
  return seats;
}

function checkLoad(seats: number, official: Official, days: Days, note: Note): void {
  if (seats > official.maxGames)
    note('H4', null, [official.id], `${seats} games, limit ${official.maxGames}`);
  for (const [day, tour] of days) {
    if (tour.length <= official.maxGamesPerDay) continue;
    note(
      'H4',
      tour.at(-1)!.game.id,
      [official.id],
      `${tour.length} games on ${day}, limit ${official.maxGamesPerDay}`,
    );
  }
}

function checkTimes(season: Season, official: Official, days: Days, note: Note): void {
  const { sameVenueGapMinutes, minRestMinutes } = season.problem.policy;
  const all: TimedGame[] = [];
  for (const tour of days.values()) {
    all.push(...tour);
    for (let i = 1; i < tour.length; i++) {
      const [before, after] = [tour[i - 1]!, tour[i]!];
      if (before.game.venue === after.game.venue) {
        if (after.tip >= before.end + sameVenueGapMinutes * MINUTE) continue;
        note(
          'H3',
          after.game.id,
          [official.id],
          `tips off too soon after ${before.game.id} at the same venue`,
        );
      } else {
        const { minutes } = season.ways(before.game.venue, after.game.venue);
        if (before.dutyTo + minutes * MINUTE <= after.dutyFrom) continue;
        note(
          'H3',
          after.game.id,
          [official.id],
          `${minutes} minutes of road from ${before.game.id} do not fit`,
        );
      }
    }
  }
  for (const before of all) {
    for (const after of all) {
      const inOrder = before.tip < after.tip || (before.tip === after.tip && before.game.id < after.game.id);
      if (before.day === after.day || !inOrder) continue;
      const home = before.dutyTo + season.ways(before.game.venue, official.home).minutes * MINUTE;
      const away = after.dutyFrom - season.ways(official.home, after.game.venue).minutes * MINUTE;
      if (away - home >= minRestMinutes * MINUTE) continue;
      const rest = Math.floor((away - home) / MINUTE);
      note(
        'H10',
        after.game.id,
        [official.id],
        `${rest} minutes at home after ${before.game.id}, limit ${minRestMinutes}`,
      );
    }
  }
}
