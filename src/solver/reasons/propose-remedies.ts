import { type RuleId } from '../answer';
import { compileSlate, type CompiledSlate } from '../compile';
import { MINUTE_MS, NOBODY, SEAT_FREE } from '../compile/facts';
import { isReluctant } from '../costs/reluctant';
import { ChangeReview } from './change-review';
import { seatsInTheWay } from './explain-open-seat';
import { findHallSet, mayHold } from './hall-set';
import { idOfHolder, placeOfSeat, renumber, type PresentSlate } from './present-slate';
import { applyRemedy, moreMinutes, type RemedyChange } from './remedy';
import { HARD_RULES } from '../rules/registry';

/** A change that might fill an open seat, and how much it asks of people. */
export interface Proposal {
  readonly change: RemedyChange;
  /** Minutes of people's time, the measure by which remedies are ranked (our own choice, no source). */
  readonly size: number;
  /** It helps somebody into the open seat itself, not into another one that frees somebody. */
  readonly direct: boolean;
}

export interface TipOffRange {
  /** Earliest and latest shift of a tip-off, in minutes; at most 0 and at least 0. */
  readonly earlierMinutes: number;
  readonly laterMinutes: number;
}

const TIP_OFF_STEP_MINUTES = 5;
/** One more game asks for a whole duty of somebody who is free anyway; half of it counts. */
const LOAD_SHARE = 0.5;
/** An exception to a level ranks behind everything that asks only for time. */
const LEVEL_SIZE = 100_000;
/** Nobody would agree to more. */
const LEVELS_SHORT_MAX = 2;

/** All changes of one fact that help somebody take the open seat, or a seat that would free somebody for it; the smallest first. */
export function proposeRemedies(
  present: PresentSlate,
  seat: number,
  range: TipOffRange,
): readonly Proposal[] {
  const { slate, holders } = present;
  const review = new ChangeReview(slate, holders);
  const proposals = [
    ...proposeWishes(present, review, seat),
    ...peopleFor(present, review, seat, true),
    ...proposeTipOff(present, seat, range),
    ...seatsThatWouldHelp(slate, review, seat).flatMap((other) => peopleFor(present, review, other, false)),
  ];
  const seen = new Set<string>();
  return proposals
    .sort((a, b) => a.size - b.size || Number(b.direct) - Number(a.direct))
    .filter(({ change }) => {
      const key = JSON.stringify(change);
      if (seen.has(key)) return false;
      seen.add(key);
      return true;
    });
}

/** Seats whose holders may take the open one: those in a shortage with it, and those in the way of somebody eligible. */
function seatsThatWouldHelp(slate: CompiledSlate, review: ChangeReview, seat: number): readonly number[] {
  const seats = new Set(findHallSet(slate, review.holders, seat)?.seats ?? []);
  for (let official = 0; official < slate.officialCount; official++) {
    if (!mayHold(slate, official, seat)) continue;
    const inTheWay = seatsInTheWay(slate, review, seat, official);
    if (inTheWay.length === 1) seats.add(inTheWay[0]!);
  }
  return [...seats].filter((other) => other !== seat && slate.seatLock[other] === SEAT_FREE);
}

/** One change for each official who fails one rule alone. */
function peopleFor(present: PresentSlate, review: ChangeReview, seat: number, direct: boolean): Proposal[] {
  const { slate } = present;
  const proposals: Proposal[] = [];
  for (let official = 0; official < slate.officialCount; official++) {
    if (official === review.holders[seat]) continue;
    const failed = HARD_RULES.filter((rule) => (rule.onSeat?.(slate, official, seat) ?? null) !== null);
    if (failed.length > 1) continue;
    const reasons = review.newViolations([{ seat, holder: official }]);
    const rules = new Set(reasons.map(({ rule }) => rule));
    if (rules.size !== 1) continue;
    const proposal = personalChange(present, review, seat, official, [...rules][0]!);
    if (proposal !== null) proposals.push({ ...proposal, direct });
  }
  return proposals;
}

function personalChange(
  { problem, slate }: PresentSlate,
  review: ChangeReview,
  seat: number,
  index: number,
  rule: RuleId,
): Omit<Proposal, 'direct'> | null {
  const game = seat >> 1;
  const id = idOfHolder(slate, index)!;
  const official = problem.officials.find((own) => own.id === id)!;
  switch (rule) {
    case 'H1': {
      const level = slate.officialLevel[index]!;
      const minLevel = slate.divisionMinLevel[2 * slate.gameDivision[game]! + (seat & 1)]!;
      const mayBeChief = (seat & 1) === 1 || slate.officialMayBeChief[index] === 1;
      if (level >= minLevel || minLevel - level > LEVELS_SHORT_MAX || !mayBeChief) return null;
      const change = {
        kind: 'level',
        official: id,
        place: placeOfSeat(slate, seat),
        level,
        minLevel,
      } as const;
      return { change, size: LEVEL_SIZE * (minLevel - level) };
    }
    case 'H2': {
      const window = {
        from: new Date(slate.dutyFromMs[game]!).toISOString(),
        to: new Date(slate.dutyToMs[game]!).toISOString(),
      };
      const minutes = moreMinutes(official, window);
      return { change: { kind: 'availability', official: id, window, moreMinutes: minutes }, size: minutes };
    }
    case 'H4': {
      const games = review.gamesOf(index);
      const onDay = new Set(games.filter((own) => slate.gameDay[own] === slate.gameDay[game])).size + 1;
      const maxGamesPerDay = Math.max(official.maxGamesPerDay, onDay);
      const maxGames = Math.max(official.maxGames, games.length + 1);
      const dutyMinutes = (slate.dutyToMs[game]! - slate.dutyFromMs[game]!) / MINUTE_MS;
      const more = maxGamesPerDay - official.maxGamesPerDay + (maxGames - official.maxGames);
      const change = { kind: 'load', official: id, maxGamesPerDay, maxGames } as const;
      return { change, size: LOAD_SHARE * dutyMinutes * more };
    }
    case 'H7': {
      const minutes = slate.outward.minutes[index * slate.venueCount + slate.gameVenue[game]!]!;
      const more = minutes - official.maxHomeMinutes;
      // The way back is longer by as much.
      return {
        change: { kind: 'reach', official: id, maxHomeMinutes: minutes, moreMinutes: more },
        size: 2 * more,
      };
    }
    default:
      return null;
  }
}

/** Where somebody could take the seat but costs more than leaving it open, the wish that makes the difference. */
function proposeWishes({ slate }: PresentSlate, review: ChangeReview, seat: number): Proposal[] {
  const proposals: Proposal[] = [];
  for (let official = 0; official < slate.officialCount; official++) {
    if (!mayHold(slate, official, seat) || !isReluctant(slate, official, seat >> 1)) continue;
    const placing = [{ seat, holder: official }];
    if (review.newViolations(placing).length > 0) continue;
    const { total, reluctant } = review.price(placing);
    if (total <= 0 || total - reluctant > 0) continue;
    const game = slate.gameIds[seat >> 1]!;
    proposals.push({
      change: { kind: 'wish', official: slate.officialIds[official]!, game },
      size: 0,
      direct: true,
    });
  }
  return proposals;
}

/** The least shift either way after which somebody may take the seat, everything else as it is. */
function proposeTipOff(
  { problem, slate, holders }: PresentSlate,
  seat: number,
  range: TipOffRange,
): Proposal[] {
  const proposals: Proposal[] = [];
  const game = slate.gameIds[seat >> 1]!;
  for (const [sign, most] of [
    [-1, range.earlierMinutes],
    [1, range.laterMinutes],
  ] as const) {
    for (let minutes = TIP_OFF_STEP_MINUTES; minutes <= Math.abs(most); minutes += TIP_OFF_STEP_MINUTES) {
      const tipOff = new Date(slate.tipOffMs[seat >> 1]! + sign * minutes * MINUTE_MS).toISOString();
      const change = { kind: 'tip-off', game, tipOff, byMinutes: sign * minutes } as const;
      const moved = compileSlate(applyRemedy(problem, change));
      const after = renumber(slate, holders, moved);
      if (!someoneMayTake(moved, after, 2 * moved.gameIds.indexOf(game) + (seat & 1))) continue;
      proposals.push({ change, size: minutes, direct: true });
      break;
    }
  }
  return proposals;
}

function someoneMayTake(slate: CompiledSlate, holders: Int32Array, seat: number): boolean {
  const review = new ChangeReview(slate, holders);
  // The move itself may break something for the partner; a seat released and taken anew shows it.
  const partner = holders[seat ^ 1]!;
  if (
    partner !== NOBODY &&
    review.mendedViolations([{ seat: seat ^ 1, holder: NOBODY }]).some(({ rule }) => rule !== 'H8')
  )
    return false;
  for (let official = 0; official < slate.officialCount; official++)
    if (mayHold(slate, official, seat) && review.newViolations([{ seat, holder: official }]).length === 0)
      return true;
  return false;
}
