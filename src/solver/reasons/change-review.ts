import { COST_TERMS, type CostBreakdown, type CostTerm, type Violation } from '../answer';
import { NOBODY, type SlateFacts } from '../compile/facts';
import { COST_TERM_RULES } from '../costs/registry';
import { judgeGame, judgeOfficial, judgeSlate } from '../rules/judge-slate';
import { HARD_RULES } from '../rules/registry';
import { gamesByOfficial, toursOf, type GamesByOfficial, type Holders } from '../tours';

/** Who should hold a seat instead; `NOBODY` leaves it open. */
export interface SeatChange {
  readonly seat: number;
  readonly holder: number;
}

/**
 * Judges and prices a few changes to a slate that need not be legal, by looking at the crews and officials
 * they concern and at nothing else. It asks the same rules and terms as `judgeSlate` and `priceSlate`.
 */
export class ChangeReview {
  private readonly held: GamesByOfficial;
  /** Nothing is broken before any change; found out when first needed. */
  private wasLegal: boolean | null = null;

  constructor(
    private readonly facts: SlateFacts,
    readonly holders: Holders,
  ) {
    this.held = gamesByOfficial(facts, holders);
  }

  /** The official's games, ascending; one whose two seats they hold is listed twice. */
  gamesOf(official: number): Int32Array {
    return this.held.games.subarray(this.held.start[official], this.held.start[official + 1]);
  }

  /** What the changes add to each term of the cost. No seat may stand in them twice. */
  price(changes: readonly SeatChange[]): CostBreakdown {
    const { games, officials } = this.concerned(changes);
    const change = Object.fromEntries(COST_TERMS.map((term) => [term, 0])) as Record<CostTerm, number>;
    for (const term of COST_TERM_RULES) {
      for (const game of games) {
        const [chief, umpire] = this.crewAfter(game, changes);
        change[term.id] += term.ofCrew?.(this.facts, game, chief, umpire) ?? 0;
        change[term.id] -=
          term.ofCrew?.(this.facts, game, this.holders[2 * game]!, this.holders[2 * game + 1]!) ?? 0;
      }
      if (term.ofOfficial === undefined && term.ofTour === undefined) continue;
      const costOf = (official: number, own: Int32Array) => {
        const ofOfficial = term.ofOfficial?.(this.facts, official, own.length) ?? 0;
        if (term.ofTour === undefined || own.length === 0) return ofOfficial;
        return toursOf(this.facts, own).reduce(
          (sum, tour) => sum + term.ofTour!(this.facts, official, tour, tour.length),
          ofOfficial,
        );
      };
      for (const official of officials) {
        change[term.id] +=
          costOf(official, this.gamesAfter(official, changes)) - costOf(official, this.gamesOf(official));
      }
    }
    return { total: COST_TERMS.reduce((sum, term) => sum + change[term], 0), ...change };
  }

  /** The broken rules that the changes bring about: those of the slate with them that it has not without. */
  newViolations(changes: readonly SeatChange[]): Violation[] {
    const after = this.violationsAfter(changes, changes);
    if (after.length === 0) return after;
    this.wasLegal ??= judgeSlate(this.facts, this.holders).length === 0;
    return without(after, this.wasLegal ? [] : this.violationsAfter(changes, []));
  }

  /** The broken rules that the changes do away with. */
  mendedViolations(changes: readonly SeatChange[]): Violation[] {
    return without(this.violationsAfter(changes, []), this.violationsAfter(changes, changes));
  }

  /** What is broken among the crews and officials that `scope` concerns, once `changes` are made. */
  private violationsAfter(scope: readonly SeatChange[], changes: readonly SeatChange[]): Violation[] {
    const { games, officials } = this.concerned(scope);
    const violations: Violation[] = [];
    const gamesOf = new Map(officials.map((official) => [official, this.gamesAfter(official, changes)]));
    for (const rule of HARD_RULES) {
      for (const game of games) {
        const [chief, umpire] = this.crewAfter(game, changes);
        judgeGame(this.facts, rule, game, { chief, umpire, isDecided: true }, violations);
      }
      for (const [official, own] of gamesOf) judgeOfficial(this.facts, rule, official, own, violations);
    }
    return violations;
  }

  private concerned(changes: readonly SeatChange[]): {
    readonly games: readonly number[];
    readonly officials: readonly number[];
  } {
    const games = new Set<number>();
    const officials = new Set<number>();
    for (const { seat, holder } of changes) {
      games.add(seat >> 1);
      for (const official of [holder, this.holders[seat]!]) if (official !== NOBODY) officials.add(official);
    }
    return { games: [...games], officials: [...officials] };
  }

  private crewAfter(game: number, changes: readonly SeatChange[]): readonly [number, number] {
    const after = (seat: number) =>
      changes.find((change) => change.seat === seat)?.holder ?? this.holders[seat]!;
    return [after(2 * game), after(2 * game + 1)];
  }

  private gamesAfter(official: number, changes: readonly SeatChange[]): Int32Array {
    const own = [...this.gamesOf(official)];
    for (const { seat, holder } of changes) {
      const held = this.holders[seat] === official;
      if (held && holder !== official) own.splice(own.indexOf(seat >> 1), 1);
      if (!held && holder === official) own.push(seat >> 1);
    }
    return Int32Array.from(own).sort();
  }
}

function without(violations: readonly Violation[], others: readonly Violation[]): Violation[] {
  const keyOf = ({ rule, game, officials, message }: Violation) =>
    JSON.stringify([rule, game, officials, message]);
  const seen = new Set(others.map(keyOf));
  return violations.filter((violation) => {
    const key = keyOf(violation);
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}
