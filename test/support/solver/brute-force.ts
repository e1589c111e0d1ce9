import type { Official, SlateProblem } from '../../../src/solver';
import { violationsOf } from '../../../src/solver/checker/judge';
import { priceOf } from '../../../src/solver/checker/price';
import { seasonOf, toursOfCrews, type Crew, type Season } from '../../../src/solver/checker/season';

/** Of all legal slates of a tiny problem: how many there are and what the cheapest costs. */
export interface BruteForce {
  readonly legalSlates: number;
  /** Infinity when no slate is legal. */
  readonly optimum: number;
}

/** Rules that an official breaks in a seat whatever the rest of the slate looks like. */
const SEAT_RULES = ['H1', 'H2', 'H5', 'H6', 'H7'];

/** Tries every filling of every seat, judged and priced by the checker alone. */
export function bruteForce(problem: SlateProblem): BruteForce {
  const season = seasonOf(problem);
  const crews: Crew[] = season.games.map(() => ({ chief: null, umpire: null }));
  const choices = season.games.flatMap((_, game) => [
    choicesFor(season, game, 'chief'),
    choicesFor(season, game, 'umpire'),
  ]);
  let legalSlates = 0;
  let optimum = Infinity;
  const fill = (seat: number): void => {
    if (seat < choices.length) {
      const game = seat >> 1;
      const name = seat % 2 === 0 ? 'chief' : 'umpire';
      for (const official of choices[seat]!) {
        const before = crews[game]!;
        crews[game] = { ...before, [name]: official };
        fill(seat + 1);
        crews[game] = before;
      }
      return;
    }
    const tours = toursOfCrews(season, crews);
    if (violationsOf(season, crews, tours).length > 0) return;
    legalSlates++;
    optimum = Math.min(optimum, priceOf(season, crews, tours).total);
  };
  fill(0);
  return { legalSlates, optimum };
}

/** Everybody who does not break a rule by the seat alone, and nobody. */
function choicesFor(season: Season, game: number, seat: 'chief' | 'umpire'): readonly (Official | null)[] {
  const id = season.games[game]!.game.id;
  const lock = season.games[game]!.game.locked?.[seat];
  if (lock === null) return [null];
  return [...season.officials.values(), null].filter((official) => {
    if (lock !== undefined) return official?.id === lock;
    if (official === null) return true;
    const crews = season.games.map((_, index): Crew => {
      const nobody = { chief: null, umpire: null };
      return index === game ? { ...nobody, [seat]: official } : nobody;
    });
    const found = violationsOf(season, crews, toursOfCrews(season, crews));
    return !found.some((v) => v.game === id && SEAT_RULES.includes(v.rule) && v.officials[0] === official.id);
  });
}
