import { type SlateProblem, type Violation } from '../../../src/solver';
import { violationsOf } from '../../../src/solver/checker/judge';
import { priceOf } from '../../../src/solver/checker/price';
import { seasonOf, toursOfCrews, type Crew, type Season } from '../../../src/solver/checker/season';
import { NOBODY } from '../../../src/solver/compile/facts';
import { type PresentSlate } from '../../../src/solver';

/** Judges and prices slates given as holders by the checker alone. */
export class PlacedSlate {
  private readonly season: Season;

  constructor(private readonly present: PresentSlate) {
    this.season = seasonOf(present.problem);
  }

  /** The present holders with some seats changed. */
  with(changes: readonly { readonly seat: number; readonly holder: number }[]): Int32Array {
    const holders = this.present.holders.slice();
    for (const { seat, holder } of changes) holders[seat] = holder;
    return holders;
  }

  violations(holders: Int32Array): Violation[] {
    const crews = this.crews(holders);
    return violationsOf(this.season, crews, toursOfCrews(this.season, crews));
  }

  price(holders: Int32Array): ReturnType<typeof priceOf> {
    const crews = this.crews(holders);
    return priceOf(this.season, crews, toursOfCrews(this.season, crews));
  }

  /** Violations of the second slate that the first has not. */
  newViolations(before: Int32Array, after: Int32Array): Violation[] {
    const keyOf = (violation: Violation) => JSON.stringify(violation);
    const seen = new Set(this.violations(before).map(keyOf));
    return this.violations(after).filter((violation) => !seen.has(keyOf(violation)));
  }

  private crews(holders: Int32Array): Crew[] {
    const { slate } = this.present;
    const gameIndexById = new Map(slate.gameIds.map((id, index) => [id, index]));
    const officialOf = (holder: number) =>
      holder === NOBODY ? null : this.season.officials.get(slate.officialIds[holder]!)!;
    return this.season.games.map(({ game }): Crew => {
      const index = gameIndexById.get(game.id)!;
      return { chief: officialOf(holders[2 * index]!), umpire: officialOf(holders[2 * index + 1]!) };
    });
  }
}

/** Distinct rule ids, in order. */
export function rulesOf(violations: readonly Violation[]): string[] {
  return [...new Set(violations.map(({ rule }) => rule))].sort();
}

/** The problem with every lock taken away, for slates that are to be explained and not to be kept. */
export function unlocked(problem: SlateProblem): SlateProblem {
  return {
    ...problem,
    games: problem.games.map(({ locked: _locked, ...game }) => game),
  };
}
