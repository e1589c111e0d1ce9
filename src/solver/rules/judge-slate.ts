import { type Violation } from '../answer';
import { NOBODY, SEAT_FREE, type SlateFacts } from '../compile/facts';
import { gamesByOfficial, toursOf, type Holders } from '../tours';
import { type HardRule } from './hard-rule';
import { HARD_RULES } from './registry';

/** Every hard rule that a slate breaks; empty when it is legal. */
export function judgeSlate(facts: SlateFacts, holders: Holders): Violation[] {
  return judge(facts, holders, () => true);
}

/**
 * Every hard rule that the locked seats break by themselves, whatever the free seats hold. A minor locked
 * beside a free seat is no fault yet: the seat can still be filled.
 */
export function judgeLocks(facts: SlateFacts): Violation[] {
  const locked = facts.seatLock.map((lock) => (lock >= 0 ? lock : NOBODY));
  const decided = (game: number) =>
    facts.seatLock[2 * game] !== SEAT_FREE && facts.seatLock[2 * game + 1] !== SEAT_FREE;
  return judge(facts, locked, decided);
}

/** `isDecided` tells of which games both seats are as they will be; only then is an open seat held against a minor. */
function judge(facts: SlateFacts, holders: Holders, isDecided: (game: number) => boolean): Violation[] {
  const violations: Violation[] = [];
  const { start, games } = gamesByOfficial(facts, holders);
  for (const rule of HARD_RULES) {
    for (let game = 0; game < facts.gameCount; game++) {
      const crew = { chief: holders[2 * game]!, umpire: holders[2 * game + 1]!, isDecided: isDecided(game) };
      judgeGame(facts, rule, game, crew, violations);
    }
    for (let official = 0; official < facts.officialCount; official++) {
      judgeOfficial(facts, rule, official, games.subarray(start[official], start[official + 1]), violations);
    }
  }
  return violations;
}

interface JudgedCrew {
  readonly chief: number;
  readonly umpire: number;
  /** Both seats are as they will be. */
  readonly isDecided: boolean;
}

/** Adds what the rule says of one game's crew. */
export function judgeGame(
  facts: SlateFacts,
  rule: HardRule,
  game: number,
  { chief, umpire, isDecided }: JudgedCrew,
  violations: Violation[],
): void {
  const report = reporterOf(facts, rule, violations);
  for (const [seat, holder] of [
    [2 * game, chief],
    [2 * game + 1, umpire],
  ] as const) {
    report(game, [holder], rule.onHolder?.(facts, seat, holder));
    if (holder !== NOBODY) report(game, [holder], rule.onSeat?.(facts, holder, seat));
  }
  if ((chief !== NOBODY && umpire !== NOBODY) || isDecided) {
    report(game, [chief, umpire], rule.onCrew?.(facts, game, chief, umpire));
  }
}

/** Adds what the rule says of one official's ascending games; a game listed twice is both seats of a crew. */
export function judgeOfficial(
  facts: SlateFacts,
  rule: HardRule,
  official: number,
  games: Int32Array,
  violations: Violation[],
): void {
  const concernsOfficials = 'onLoad' in rule || 'onFollowing' in rule || 'onRest' in rule;
  if (games.length === 0 || !concernsOfficials) return;
  const report = reporterOf(facts, rule, violations);
  report(NOBODY, [official], rule.onLoad?.(facts, official, { gamesOnDay: 0, gamesInSlate: games.length }));
  for (const tour of toursOf(facts, games)) {
    const gamesOnDay = new Set(tour).size;
    report(tour.at(-1)!, [official], rule.onLoad?.(facts, official, { gamesOnDay, gamesInSlate: 0 }));
    for (let i = 1; i < tour.length; i++) {
      // One game twice is both seats of a crew, which H1 reports.
      if (tour[i - 1] === tour[i]) continue;
      report(tour[i]!, [official], rule.onFollowing?.(facts, official, tour[i - 1]!, tour[i]!));
    }
  }
  if (rule.onRest === undefined) return;
  for (const [index, game] of games.entries()) {
    for (const other of games.subarray(0, index)) {
      if (facts.gameDay[other] === facts.gameDay[game]) continue;
      const inOrder = facts.tipOffMs[other]! <= facts.tipOffMs[game]!;
      const [earlier, later] = inOrder ? [other, game] : [game, other];
      report(later, [official], rule.onRest(facts, official, earlier, later));
    }
  }
}

type Report = (game: number, officials: readonly number[], message: string | null | undefined) => void;

function reporterOf(facts: SlateFacts, rule: HardRule, violations: Violation[]): Report {
  return (game, officials, message) => {
    if (message === null || message === undefined) return;
    const ids = officials
      .filter((official) => official !== NOBODY)
      .map((official) => facts.officialIds[official]!);
    violations.push({
      rule: rule.id,
      game: game === NOBODY ? null : facts.gameIds[game]!,
      officials: ids,
      message,
    });
  };
}
