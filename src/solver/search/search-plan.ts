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
  /** About how many steps all threads together will make; see `STEPS_PER_SECOND`. */
  readonly steps: number;
}

/** From here on a slate is cut among the threads. */
const SPLIT_GAMES_MIN = 400;
const ROUNDS_OF_SPLIT_CYCLE = 40;
/** Small slates settle soon; several short passes find more than a long one. */
const SMALL_GAMES_MAX = 60;
const CYCLES_OF_SMALL_MIN = 5;
const STEPS_OF_SMALL_CYCLE = 1.2e6;
/** Hot enough to reshuffle whole gyms, cold enough to settle the last kilometre; in cost units. */
const MAIN_COOLING: CoolingSchedule = { hot: 40, cold: 0.4 };
const SMALL_COOLING: CoolingSchedule = { hot: 60, cold: 0.4 };
/** Hot enough that only open seats matter. */
const COVERAGE_COOLING: CoolingSchedule = { hot: 400, cold: 40 };
const COVERAGE_SHARE = 0.35;

/** Steps that a thread makes in a second on a small machine that it has to itself, measured; a rough guide only. */
export const STEPS_PER_SECOND = 1e6;
/** With fewer steps for each game than this, a hot start would never cool down again. */
const STEPS_PER_GAME_OF_HOT_START = 60_000;
const HOT_MIN = 4;
/** A few stray open seats fill up on the way; only a real shortage is worth a phase of its own. */
const SHORTAGE_SHARE = 0.005;

/** The hottest temperature that a run has the time to cool down from. */
function startOf(cooling: CoolingSchedule, { games, steps }: RunSize): CoolingSchedule {
  const affordable = Math.sqrt(Math.min(1, steps / Math.max(1, games) / STEPS_PER_GAME_OF_HOT_START));
  return { ...cooling, hot: Math.max(HOT_MIN, cooling.hot * affordable) };
}

/** How a run divides its time. */
export function planSearch(size: RunSize): readonly Cycle[] {
  const { games, threads, openSeats } = size;
  const split = games >= SPLIT_GAMES_MIN && threads > 1;
  const small = games <= SMALL_GAMES_MAX;
  // A proof of a small slate waits for each pass to hear of its best slate, so passes stay short.
  const cycles = small
    ? Math.max(CYCLES_OF_SMALL_MIN, Math.round(size.steps / threads / STEPS_OF_SMALL_CYCLE))
    : 1;
  const main = small ? SMALL_COOLING : startOf(MAIN_COOLING, size);
  return Array.from({ length: cycles }, () => {
    const share = 1 / cycles;
    const cycle = (cooling: CoolingSchedule, part: number): Cycle => ({
      cooling,
      share: share * part,
      split,
      rounds: split ? Math.max(2, Math.round(ROUNDS_OF_SPLIT_CYCLE * part)) : 1,
    });
    if (openSeats <= SHORTAGE_SHARE * 2 * games) return [cycle(main, 1)];
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
