import { type Violation } from '../answer';
import { type CompiledSlate } from '../compile/compiled-slate';
import { NOBODY } from '../compile/facts';
import { judgeSlate } from '../rules/judge-slate';
import { HARD_RULES } from '../rules/registry';
import { type RepairRoot } from './broken-seats';
import { type BrokenSeat } from './repair-report';
import { nameSeat } from './write-alternative';

/** The seat, and why its published official cannot hold it. */
export function describeBroken(slate: CompiledSlate, seat: number): BrokenSeat {
  const holder = slate.seatPublished[seat]!;
  if (holder === NOBODY) return { ...nameSeat(slate, seat), official: null, reasons: [] };
  const reasons = HARD_RULES.flatMap((rule) => [
    rule.onSeat?.(slate, holder, seat) ?? [],
    rule.onHolder?.(slate, seat, holder) ?? [],
  ]).flat();
  return { ...nameSeat(slate, seat), official: slate.officialIds[holder]!, reasons };
}

/** What the published slate still breaks once its broken seats are left out. */
export function clashesOf(slate: CompiledSlate, root: RepairRoot): Violation[] {
  if (root.games.length + root.officials.length === 0) return [];
  const holders = slate.seatPublished.slice();
  for (const seat of root.brokenSeats) holders[seat] = NOBODY;
  // A minor whose partner is missing for the moment is no clash: the seat will be filled.
  const waiting = new Set(root.brokenSeats.map((seat) => slate.gameIds[seat >> 1]!));
  return judgeSlate(slate, holders).filter(
    ({ rule, game }) => rule !== 'H6' && !(rule === 'H8' && game !== null && waiting.has(game)),
  );
}
