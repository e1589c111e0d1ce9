import { type Assignment, type CostBreakdown, PROOF_TOLERANCE } from '../answer';
import { violationsOf } from '../checker/judge';
import { priceOf } from '../checker/price';
import { seasonOf, toursOfCrews, type Season } from '../checker/season';
import { type SlateProblem } from '../problem';

/** Judges slates of one problem with the independent checker; an illegal or wrongly priced one is a fault of ours. */
export class Verifier {
  private readonly season: Season;

  constructor(problem: SlateProblem) {
    this.season = seasonOf(problem);
  }

  /** Throws when the slate is not legal or does not cost what is stated. */
  verify(assignments: readonly Assignment[], cost: CostBreakdown): void {
    const { season } = this;
    const officialOf = (id: string | null) => (id === null ? null : season.officials.get(id)!);
    const crewByGame = new Map(
      assignments.map(({ game, chief, umpire }) => [
        game,
        { chief: officialOf(chief), umpire: officialOf(umpire) },
      ]),
    );
    const crews = season.games.map(({ game }) => crewByGame.get(game.id)!);
    const tours = toursOfCrews(season, crews);
    const broken = violationsOf(season, crews, tours);
    if (broken[0] !== undefined)
      throw new Error(
        `the checker finds the slate illegal: ${broken.map((v) => `${v.rule} ${v.message}`).join('; ')}`,
      );
    const { total } = priceOf(season, crews, tours);
    if (Math.abs(total - cost.total) > PROOF_TOLERANCE * Math.max(1, Math.abs(total)))
      throw new Error(`the checker finds the slate to cost ${total}, not ${cost.total}`);
  }
}
