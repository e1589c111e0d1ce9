import { type SeededRandom } from '../random';

/**
 * Simulated annealing (Kirkpatrick, Gelatt and Vecchi 1983): a change for the worse is accepted with
 * probability exp(−delta / temperature). Drawing the limit first lets the pricing of a move stop early.
 */
export function acceptanceLimit(temperature: number, random: SeededRandom): number {
  return -temperature * Math.log(1 - random.unit());
}

/** Falls from `hot` to `cold` by the same factor in equal shares of the run. */
export interface CoolingSchedule {
  /** Cost units. */
  readonly hot: number;
  readonly cold: number;
}

/** `progress` runs from 0 to 1. */
export function temperatureAt({ hot, cold }: CoolingSchedule, progress: number): number {
  return hot * (cold / hot) ** Math.min(1, Math.max(0, progress));
}
