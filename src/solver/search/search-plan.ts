import { temperatureAt, type CoolingSchedule } from './acceptance';

/** One pass of annealing over the whole temperature range, or a part of one. */
export interface Cycle {
  readonly cooling: CoolingSchedule;
  /** Share of the run's length; the shares of a plan add up to 1. */
  readonly share: number;
  /** The threads meet this often; at least once. */
  readonly rounds: number;
  /** Threads search parts of the map and join their results; otherwise each searches the whole slate. */
  readonly split: boolean;
}

export interface RunSize {
  readonly games: number;
  readonly threads: number;
  /** Of the first slate. */
  readonly openSeats: number;
}

/** From here on a slate is cut among the threads. */
const SPLIT_GAMES_MIN = 400;
const ROUNDS_OF_SPLIT_CYCLE = 40;
/** Small slates settle soon; several short passes find more than a long one. */
const SMALL_GAMES_MAX = 60;
const CYCLES_OF_SMALL = 5;
/** Hot enough to reshuffle whole gyms, cold enough to settle the last kilometre; in cost units. */
const MAIN_COOLING: CoolingSchedule = { hot: 40, cold: 0.4 };
const SMALL_COOLING: CoolingSchedule = { hot: 60, cold: 0.4 };
/** Hot enough that only open seats matter. */
const COVERAGE_COOLING: CoolingSchedule = { hot: 400, cold: 40 };
const COVERAGE_SHARE = 0.35;

/** How a run divides its time. */
export function planSearch({ games, threads, openSeats }: RunSize): readonly Cycle[] {
  const split = games >= SPLIT_GAMES_MIN && threads > 1;
  const small = games <= SMALL_GAMES_MAX;
  const cycles = small ? CYCLES_OF_SMALL : 1;
  const main = small ? SMALL_COOLING : MAIN_COOLING;
  return Array.from({ length: cycles }, () => {
    const share = 1 / cycles;
    const cycle = (cooling: CoolingSchedule, part: number): Cycle => ({
      cooling,
      share: share * part,
      split,
      rounds: split ? Math.max(2, Math.round(ROUNDS_OF_SPLIT_CYCLE * part)) : 1,
    });
    if (openSeats === 0) return [cycle(main, 1)];
    return [cycle(COVERAGE_COOLING, COVERAGE_SHARE), cycle(main, 1 - COVERAGE_SHARE)];
  }).flat();
}

/** The temperatures of one round of a cycle. */
export function coolingOfRound(cycle: Cycle, round: number): CoolingSchedule {
  return {
    hot: temperatureAt(cycle.cooling, round / cycle.rounds),
    cold: temperatureAt(cycle.cooling, (round + 1) / cycle.rounds),
  };
}
