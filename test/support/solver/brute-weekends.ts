import type { Official, SlateProblem } from '../../../src/solver';
import { violationsOf } from '../../../src/solver/checker/judge';
import { priceOf } from '../../../src/solver/checker/price';
import { seasonOf, toursOfCrews, type Crew, type Season } from '../../../src/solver/checker/season';

/** One official's games in a slate in which nobody else works, and what they cost that official alone. */
export interface BruteWeekend {
  readonly seats: readonly { readonly game: string; readonly side: 0 | 1 }[];
  /** Travel, balance and the seats' own costs; a kept published seat earns the price of a change back. */
  readonly cost: number;
}

const SIDES = ['chief', 'umpire'] as const;
/** Rules about the rest of the crew, and about locks of other people's seats. */
const RULES_OF_OTHERS = ['H6', 'H8'];

/** Tries neither, the chief's and the umpire's seat of every game, judged and priced by the checker alone. */
export function bruteWeekends(problem: SlateProblem, official: Official): readonly BruteWeekend[] {
  const season = seasonOf(problem);
  const nobody = { chief: null, umpire: null };
  const crews: Crew[] = season.games.map(() => nobody);
  const idle = costOf(season, crews);
  const found: BruteWeekend[] = [];
  const fill = (at: number): void => {
    if (at < crews.length) {
      fill(at + 1);
      for (const side of SIDES) {
        const lock = problem.games[at]!.locked?.[side];
        if (lock !== undefined && lock !== official.id) continue;
        crews[at] = { ...nobody, [side]: official };
        fill(at + 1);
      }
      crews[at] = nobody;
      return;
    }
    const violations = violationsOf(season, crews, toursOfCrews(season, crews));
    if (violations.some(({ rule }) => !RULES_OF_OTHERS.includes(rule))) return;
    const distance = official.priorGames - official.targetGames;
    found.push({
      seats: crews.flatMap(({ chief, umpire }, game) =>
        chief === null && umpire === null
          ? []
          : [{ game: problem.games[game]!.id, side: chief === null ? 1 : 0 }],
      ),
      cost: costOf(season, crews) - idle + problem.policy.weights.balance * distance ** 2,
    });
  };
  fill(0);
  return found;
}

/** All terms but those of open seats; with one official nobody has a partner. */
function costOf(season: Season, crews: readonly Crew[]): number {
  const { total, open } = priceOf(season, crews, toursOfCrews(season, crews));
  return total - open;
}
