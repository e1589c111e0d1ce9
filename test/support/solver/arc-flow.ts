import type { Game, Official, SlateAnswer, SlateProblem } from '../../../src/solver';
import { countOf, merged, waysOf } from './arc-flow-facts';
import { LinearProgram } from './linear-program';

/** A slate problem as a mixed-integer program, and the way back from a solution of it. */
export interface ArcFlow {
  readonly program: LinearProgram;
  readonly crewsOf: (values: Float64Array) => SlateAnswer['assignments'];
}

type Side = 'chief' | 'umpire';
const SIDES: readonly Side[] = ['chief', 'umpire'];
const MINUTE_MS = 60_000;

interface Timed {
  readonly game: Game;
  readonly tip: number;
  readonly end: number;
  readonly dutyFrom: number;
  readonly dutyTo: number;
  readonly day: string;
}

/**
 * The plain exact model: for each official and day a path from home through games and home again, a variable
 * for each seat that they may take, rest and meetings as pairs, and for each game one crew of two kinds of
 * officials (level, minor). Written from the format's definition alone; the solver's own proof lists whole
 * weekends instead, and shares nothing with this.
 */
export function arcFlowOf(problem: SlateProblem): ArcFlow {
  return new ArcFlowWriter(problem).write();
}

class ArcFlowWriter {
  private readonly program = new LinearProgram();
  private readonly games: readonly Timed[];
  private readonly divisions: ReadonlyMap<string, SlateProblem['divisions'][number]>;
  private readonly ways: (from: string, to: string) => { minutes: number; metres: number };
  /** Variable of `official game side`. */
  private readonly seat = new Map<string, number>();

  constructor(private readonly problem: SlateProblem) {
    const calendar = new Intl.DateTimeFormat('en-CA', { timeZone: problem.timeZone, dateStyle: 'short' });
    const { arrivalLeadMinutes, wrapUpMinutes } = problem.policy;
    this.games = problem.games
      .map((game): Timed => {
        const tip = Date.parse(game.tipOff);
        const end = tip + game.durationMinutes * MINUTE_MS;
        return {
          game,
          tip,
          end,
          dutyFrom: tip - arrivalLeadMinutes * MINUTE_MS,
          dutyTo: end + wrapUpMinutes * MINUTE_MS,
          day: calendar.format(tip),
        };
      })
      .sort((a, b) => a.tip - b.tip || (a.game.id < b.game.id ? -1 : 1));
    this.divisions = new Map(problem.divisions.map((division) => [division.id, division]));
    this.ways = waysOf(problem);
  }

  write(): ArcFlow {
    for (const official of this.problem.officials) this.addOfficial(official);
    for (const timed of this.games) this.addCrew(timed.game);
    return { program: this.program, crewsOf: (values) => this.crewsOf(values) };
  }

  private addOfficial(official: Official): void {
    const { weights, minRestMinutes } = this.problem.policy;
    const mine = this.games.filter((timed) => this.addSeats(official, timed));
    const works = (timed: Timed): [number, number][] =>
      SIDES.flatMap((side) => {
        const variable = this.seat.get(key(official.id, timed.game.id, side));
        return variable === undefined ? [] : [[variable, 1]];
      });
    for (const timed of mine) this.program.addRow(works(timed), 0, 1);
    for (const day of new Set(mine.map((timed) => timed.day))) {
      const tour = mine.filter((timed) => timed.day === day);
      this.addTour(official, tour, works);
      this.program.addRow(tour.flatMap(works), 0, official.maxGamesPerDay);
    }
    for (const [i, before] of mine.entries()) {
      for (const after of mine.slice(i + 1)) {
        if (before.day === after.day) continue;
        const back = before.dutyTo + this.ways(before.game.venue, official.home).minutes * MINUTE_MS;
        const leaves = after.dutyFrom - this.ways(official.home, after.game.venue).minutes * MINUTE_MS;
        if (leaves - back >= minRestMinutes * MINUTE_MS) continue;
        this.program.addRow([...works(before), ...works(after)], 0, 1);
      }
    }
    // The balance is convex in the number of games, so that these need not be whole.
    const most = Math.min(official.maxGames, mine.length);
    const counts = Array.from({ length: most + 1 }, (_, games): [number, number] => {
      const distance = official.priorGames + games - official.targetGames;
      return [this.program.addColumn(weights.balance * distance ** 2, 1), games];
    });
    this.program.addRow(
      counts.map(([column]) => [column, 1]),
      1,
      1,
    );
    this.program.addRow([...counts.map(([c, n]): [number, number] => [c, -n]), ...mine.flatMap(works)], 0, 0);
  }

  /** The seats of one game that this official may take; false when there is none. */
  private addSeats(official: Official, { game, dutyFrom, dutyTo }: Timed): boolean {
    const { weights } = this.problem.policy;
    const division = this.divisions.get(game.division)!;
    const refuses =
      this.ways(official.home, game.venue).minutes > official.maxHomeMinutes ||
      official.avoidVenues?.includes(game.venue) === true ||
      [game.home, game.away].some((team) => official.avoidTeams?.includes(team)) ||
      !merged(official.available).some(([from, to]) => from <= dutyFrom && dutyTo <= to);
    if (refuses) return false;
    const seen = (team: string) => countOf(official.recentTeams, team);
    const reluctant = (official.reluctant ?? []).some(
      ({ from, to }) => Date.parse(from) < dutyTo && dutyFrom < Date.parse(to),
    );
    let any = false;
    for (const side of SIDES) {
      const [least, target] =
        side === 'chief'
          ? [division.chiefMinLevel, division.chiefTargetLevel]
          : [division.umpireMinLevel, division.umpireTargetLevel];
      const lock = game.locked?.[side];
      if (official.level < least || (side === 'chief' && !official.mayBeChief)) continue;
      if (lock !== undefined && lock !== official.id) continue;
      const cost =
        weights.teamRepeat * (seen(game.home) + seen(game.away)) +
        weights.overLevel * Math.max(0, official.level - target) +
        (reluctant ? weights.reluctant : 0) -
        (game.published?.[side] === official.id ? weights.change : 0);
      this.seat.set(key(official.id, game.id, side), this.program.addWhole(cost));
      any = true;
    }
    return any;
  }

  /** Arcs from home to each game, between games that may follow each other, and home again. */
  private addTour(official: Official, tour: readonly Timed[], works: (t: Timed) => [number, number][]): void {
    const { weights, sameVenueGapMinutes } = this.problem.policy;
    const inward: [number, number][][] = tour.map(() => []);
    const outward: [number, number][][] = tour.map(() => []);
    const arc = (from: string, to: string): number =>
      this.program.addWhole((weights.travelPerKm * this.ways(from, to).metres) / 1000);
    const leaving: [number, number][] = [];
    tour.forEach((before, i) => {
      const first = arc(official.home, before.game.venue);
      leaving.push([first, 1]);
      inward[i]!.push([first, 1]);
      outward[i]!.push([arc(before.game.venue, official.home), 1]);
      tour.forEach((after, j) => {
        if (j <= i) return;
        const follows =
          before.game.venue === after.game.venue
            ? after.tip >= before.end + sameVenueGapMinutes * MINUTE_MS
            : before.dutyTo + this.ways(before.game.venue, after.game.venue).minutes * MINUTE_MS <=
              after.dutyFrom;
        if (!follows) return;
        const way = arc(before.game.venue, after.game.venue);
        outward[i]!.push([way, 1]);
        inward[j]!.push([way, 1]);
      });
    });
    this.program.addRow(leaving, 0, 1);
    tour.forEach((timed, i) => {
      const visits = works(timed).map(([column]): [number, number] => [column, -1]);
      this.program.addRow([...inward[i]!, ...visits], 0, 0);
      this.program.addRow([...outward[i]!, ...visits], 0, 0);
    });
  }

  private addCrew(game: Game): void {
    const { weights } = this.problem.policy;
    const { pairingCost } = this.divisions.get(game.division)!;
    const officials = this.problem.officials;
    const kindOf = (official: Official | undefined) =>
      official === undefined ? 'nobody' : `${official.level} ${official.minor}`;
    const rows = new Map<string, [number, number][]>();
    const kinds = SIDES.map((side) => {
      const byKind = new Map<string, Official | undefined>();
      for (const official of officials) {
        const column = this.seat.get(key(official.id, game.id, side));
        if (column === undefined) continue;
        byKind.set(kindOf(official), official);
        const at = `${side} ${kindOf(official)}`;
        rows.set(at, [...(rows.get(at) ?? []), [column, 1]]);
      }
      // A seat locked to somebody is never open, and one locked to nobody costs nothing.
      if (typeof game.locked?.[side] !== 'string') byKind.set('nobody', undefined);
      const published = game.published?.[side];
      if (published !== undefined) this.program.offset += weights.change;
      return byKind;
    });
    const crews: [number, number][] = [];
    for (const [chiefKind, chief] of kinds[0]!) {
      for (const [umpireKind, umpire] of kinds[1]!) {
        if ((chief?.minor ?? true) && (umpire?.minor ?? true) && (chief ?? umpire) !== undefined) continue;
        const gap = chief && umpire ? chief.level - umpire.level : null;
        if (gap !== null && gap < 0) continue;
        const open = SIDES.filter((side, i) => {
          return [chief, umpire][i] === undefined && game.locked?.[side] !== null;
        }).length;
        const pairing = gap === null ? 0 : pairingCost[Math.min(gap, pairingCost.length - 1)]!;
        const crew = this.program.addColumn(pairing + open * weights.openSeat * game.priority, 1);
        crews.push([crew, 1]);
        if (chief) rows.get(`chief ${chiefKind}`)!.push([crew, -1]);
        if (umpire) rows.get(`umpire ${umpireKind}`)!.push([crew, -1]);
      }
    }
    this.program.addRow(crews, 1, 1);
    for (const entries of rows.values()) this.program.addRow(entries, 0, 0);
    this.addMeetings(game);
  }

  private addMeetings(game: Game): void {
    const { officials, policy } = this.problem;
    const columns = (official: Official): [number, number][] =>
      SIDES.flatMap((side) => {
        const column = this.seat.get(key(official.id, game.id, side));
        return column === undefined ? [] : [[column, 1]];
      });
    for (const [i, a] of officials.entries()) {
      for (const b of officials.slice(i + 1)) {
        const both = [...columns(a), ...columns(b)];
        if (columns(a).length === 0 || columns(b).length === 0) continue;
        const together = Math.max(countOf(a.recentPartners, b.id), countOf(b.recentPartners, a.id));
        if (a.avoidOfficials?.includes(b.id) === true || b.avoidOfficials?.includes(a.id) === true)
          this.program.addRow(both, 0, 1);
        else if (together * policy.weights.partnerRepeat > 0) {
          const met = this.program.addColumn(policy.weights.partnerRepeat * together, 1);
          this.program.addRow([...both, [met, -1]], -1, 1);
        }
      }
    }
  }

  private crewsOf(values: Float64Array): SlateAnswer['assignments'] {
    const holder = (game: string, side: Side): string | null =>
      this.problem.officials.find(({ id }) => (values[this.seat.get(key(id, game, side)) ?? -1] ?? 0) > 0.5)
        ?.id ?? null;
    return this.problem.games.map(({ id }) => ({
      game: id,
      chief: holder(id, 'chief'),
      umpire: holder(id, 'umpire'),
    }));
  }
}

function key(official: string, game: string, side: Side): string {
  return JSON.stringify([official, game, side]);
}
