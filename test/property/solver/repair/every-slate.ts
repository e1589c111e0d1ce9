import type { Assignment, SlateProblem } from '../../../../src/solver';
import { violationsOf } from '../../../../src/solver/checker/judge';
import { seasonOf, toursOfCrews, type Crew } from '../../../../src/solver/checker/season';

/** Every slate of a tiny problem whose crews are legal one by one, and the checker's word on each as a whole. */
export class EverySlate {
  private readonly season;
  private readonly crewsByGame: readonly (readonly Crew[])[];

  constructor(problem: SlateProblem) {
    this.season = seasonOf(problem);
    const nobody: Crew = { chief: null, umpire: null };
    const everybody = [...this.season.officials.values(), null];
    const pairs = everybody.flatMap((chief) => everybody.map((umpire): Crew => ({ chief, umpire })));
    this.crewsByGame = this.season.games.map(({ game: { id } }, game) =>
      pairs.filter((crew) => {
        const alone = this.season.games.map((_, index) => (index === game ? crew : nobody));
        return !this.judge(alone).some((violation) => violation.game === id);
      }),
    );
  }

  *slates(): Generator<readonly Assignment[]> {
    yield* this.fill([]);
  }

  isLegal(assignments: readonly Assignment[]): boolean {
    const officialOf = (id: string | null) => (id === null ? null : this.season.officials.get(id)!);
    const crews = assignments.map(({ chief, umpire }) => ({
      chief: officialOf(chief),
      umpire: officialOf(umpire),
    }));
    return this.judge(crews).length === 0;
  }

  private *fill(before: readonly Assignment[]): Generator<readonly Assignment[]> {
    const timed = this.season.games[before.length];
    if (timed === undefined) {
      yield before;
      return;
    }
    for (const { chief, umpire } of this.crewsByGame[before.length]!)
      yield* this.fill([
        ...before,
        { game: timed.game.id, chief: chief?.id ?? null, umpire: umpire?.id ?? null },
      ]);
  }

  private judge(crews: readonly Crew[]): ReturnType<typeof violationsOf> {
    return violationsOf(this.season, crews, toursOfCrews(this.season, crews));
  }
}
