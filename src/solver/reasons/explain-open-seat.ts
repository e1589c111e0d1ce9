import { type RuleId, type Violation } from '../answer';
import { type CompiledSlate } from '../compile';
import { NOBODY, SEAT_KEPT_OPEN } from '../compile/facts';
import { HARD_RULES } from '../rules/registry';
import { type Holders } from '../tours';
import { ChangeReview } from './change-review';
import { explainSeat } from './explain-seat';
import { findHallSet, mayHold, type HallSet } from './hall-set';
import { placeOfSeat, type SeatPlace } from './present-slate';
import { quickXplain } from './quick-xplain';

/** How many officials a rule keeps from a seat, whatever else they do. */
export interface RuleTally {
  readonly rule: RuleId;
  /** Everybody who fails it. */
  readonly officials: number;
  /** Those whom it stops first, going by the rules in their order; these add up to all who may not take the seat. */
  readonly first: number;
  /** Those who fail it and no other. */
  readonly only: number;
}

/** Somebody who could take the seat but for what they, or their partner, do otherwise. */
export interface HeldBack {
  readonly official: string;
  readonly reasons: readonly Violation[];
  /** A smallest set of their own seats that stands in the way; empty when it is the partner or the limits. */
  readonly inTheWay: readonly SeatPlace[];
}

export interface ShortageReport {
  readonly seats: readonly SeatPlace[];
  readonly officials: readonly { readonly official: string; readonly roomFor: number }[];
  readonly room: number;
  /** Least level that all of the seats ask for. */
  readonly minLevel: number;
  /** From the first duty's start to the last one's end, ISO 8601. */
  readonly from: string;
  readonly to: string;
}

/** Why nobody holds a seat. `tally` counts who may not take it in any slate. */
export type OpenSeatReason = { readonly place: SeatPlace; readonly tally: readonly RuleTally[] } & (
  | { readonly kind: 'kept-open' }
  /** It need not be: these may take it as the slate stands, cheapest first. */
  | { readonly kind: 'can-be-filled'; readonly officials: readonly string[] }
  | { readonly kind: 'nobody-eligible' }
  /** Those who may take it are too few for all the seats that need them. */
  | {
      readonly kind: 'needed-elsewhere';
      readonly shortage: ShortageReport;
      readonly heldBack: readonly HeldBack[];
    }
  /** Counting shows no shortage; each of those who may take it is held back by something of their own. */
  | { readonly kind: 'held-back'; readonly heldBack: readonly HeldBack[] }
);

/** Why a seat is open; null when somebody holds it. */
export function explainOpenSeat(slate: CompiledSlate, holders: Holders, seat: number): OpenSeatReason | null {
  if (holders[seat] !== NOBODY) return null;
  const base = { place: placeOfSeat(slate, seat), tally: tallyRules(slate, seat) };
  if (slate.seatLock[seat] === SEAT_KEPT_OPEN) return { ...base, kind: 'kept-open' };
  const { candidates } = explainSeat(slate, holders, seat);
  const allowed = candidates.filter(({ kind }) => kind === 'allowed').map(({ official }) => official);
  if (allowed.length > 0) return { ...base, kind: 'can-be-filled', officials: allowed };
  const heldBack = listHeldBack(slate, holders, seat);
  if (heldBack.length === 0) return { ...base, kind: 'nobody-eligible' };
  const shortage = findHallSet(slate, holders, seat);
  if (shortage === null) return { ...base, kind: 'held-back', heldBack };
  return { ...base, kind: 'needed-elsewhere', shortage: reportShortage(slate, shortage), heldBack };
}

/** The rules that look at one official and one seat alone, with the numbers of those who fail them. */
export function tallyRules(slate: CompiledSlate, seat: number): readonly RuleTally[] {
  const rules = HARD_RULES.filter((rule) => rule.onSeat !== undefined);
  const tally = rules.map(({ id }) => ({ rule: id, officials: 0, first: 0, only: 0 }));
  for (let official = 0; official < slate.officialCount; official++) {
    const failed = [...rules.keys()].filter((index) => rules[index]!.onSeat!(slate, official, seat) !== null);
    for (const index of failed) tally[index]!.officials++;
    if (failed.length > 0) tally[failed[0]!]!.first++;
    if (failed.length === 1) tally[failed[0]!]!.only++;
  }
  return tally.filter(({ officials }) => officials > 0);
}

function listHeldBack(slate: CompiledSlate, holders: Holders, seat: number): readonly HeldBack[] {
  const review = new ChangeReview(slate, holders);
  const heldBack: HeldBack[] = [];
  for (let official = 0; official < slate.officialCount; official++) {
    if (!mayHold(slate, official, seat)) continue;
    const reasons = review.newViolations([{ seat, holder: official }]);
    if (reasons.length === 0) continue;
    const inTheWay = seatsInTheWay(slate, review, seat, official).map((own) => placeOfSeat(slate, own));
    heldBack.push({ official: slate.officialIds[official]!, reasons, inTheWay });
  }
  return heldBack;
}

/** Rules about one official's own games: the ones that giving up a seat can mend. */
const OWN_RULES: readonly RuleId[] = ['H1', 'H3', 'H4', 'H10'];

/** A smallest set of the official's own seats beside which they cannot take the seat; as indexes. */
export function seatsInTheWay(
  slate: CompiledSlate,
  review: ChangeReview,
  seat: number,
  official: number,
): readonly number[] {
  const id = slate.officialIds[official]!;
  const own = [...new Set(review.gamesOf(official))].flatMap((game) =>
    [2 * game, 2 * game + 1].filter((held) => review.holders[held] === official),
  );
  const fails = (kept: readonly number[]): boolean => {
    const released = own.filter((held) => !kept.includes(held));
    const changes = [{ seat, holder: official }, ...released.map((held) => ({ seat: held, holder: NOBODY }))];
    return review
      .newViolations(changes)
      .some(({ rule, officials }) => OWN_RULES.includes(rule) && officials.every((own) => own === id));
  };
  return own.length === 0 ? [] : (quickXplain(own, fails) ?? []);
}

export function reportShortage(slate: CompiledSlate, { seats, officials, room }: HallSet): ShortageReport {
  const minLevels = seats.map(
    (seat) => slate.divisionMinLevel[2 * slate.gameDivision[seat >> 1]! + (seat & 1)]!,
  );
  const from = Math.min(...seats.map((seat) => slate.dutyFromMs[seat >> 1]!));
  const to = Math.max(...seats.map((seat) => slate.dutyToMs[seat >> 1]!));
  return {
    seats: seats.map((seat) => placeOfSeat(slate, seat)),
    officials: officials.map(({ official, roomFor }) => ({
      official: slate.officialIds[official]!,
      roomFor,
    })),
    room,
    minLevel: Math.min(...minLevels),
    from: new Date(from).toISOString(),
    to: new Date(to).toISOString(),
  };
}
