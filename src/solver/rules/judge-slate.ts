import { type RuleId, type Violation } from '../answer';
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
  const report = (
    rule: RuleId,
    game: number,
    officials: readonly number[],
    message: string | null | undefined,
  ) => {
    if (message === null || message === undefined) return;
    const ids = officials
      .filter((official) => official !== NOBODY)
      .map((official) => facts.officialIds[official]!);
    violations.push({ rule, game: game === NOBODY ? null : facts.gameIds[game]!, officials: ids, message });
  };
  const { start, games } = gamesByOfficial(facts, holders);
  for (const rule of HARD_RULES) {
    for (let game = 0; game < facts.gameCount; game++) {
      const chief = holders[2 * game]!;
      const umpire = holders[2 * game + 1]!;
      for (const seat of [2 * game, 2 * game + 1]) {
        const holder = holders[seat]!;
        report(rule.id, game, [holder], rule.onHolder?.(facts, seat, holder));
        if (holder !== NOBODY) report(rule.id, game, [holder], rule.onSeat?.(facts, holder, seat));
      }
      const bothFilled = chief !== NOBODY && umpire !== NOBODY;
      if (bothFilled || isDecided(game)) {
        report(rule.id, game, [chief, umpire], rule.onCrew?.(facts, game, chief, umpire));
      }
    }
    for (let official = 0; official < facts.officialCount; official++) {
      const own = games.subarray(start[official], start[official + 1]);
      if (own.length > 0) judgeOfficial(facts, rule, official, own, report);
    }
  }
  return violations;
}

type Report = (
  rule: RuleId,
  game: number,
  officials: readonly number[],
  message: string | null | undefined,
) => void;

function judgeOfficial(
  facts: SlateFacts,
  rule: HardRule,
  official: number,
  games: Int32Array,
  report: Report,
): void {
  const tours = toursOf(facts, games);
  const gamesOnDay = Math.max(...tours.map((tour) => new Set(tour).size));
  report(
    rule.id,
    NOBODY,
    [official],
    rule.onLoad?.(facts, official, { gamesOnDay, gamesInSlate: games.length }),
  );
  for (const tour of tours) {
    for (let i = 1; i < tour.length; i++) {
      // One game twice is both seats of a crew, which H1 reports.
      if (tour[i - 1] === tour[i]) continue;
      report(rule.id, tour[i]!, [official], rule.onFollowing?.(facts, official, tour[i - 1]!, tour[i]!));
    }
  }
  if (rule.onRest === undefined) return;
  for (const [index, game] of games.entries()) {
    for (const other of games.subarray(0, index)) {
      if (facts.gameDay[other] === facts.gameDay[game]) continue;
      const inOrder = facts.tipOffMs[other]! <= facts.tipOffMs[game]!;
      const [earlier, later] = inOrder ? [other, game] : [game, other];
      report(rule.id, later, [official], rule.onRest(facts, official, earlier, later));
    }
  }
}
