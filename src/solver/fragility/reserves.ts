import { MINUTE_MS, NOBODY } from '../compile/facts';
import { ChangeReview } from '../reasons/change-review';
import { idOfHolder, placeOfSeat, type PresentSlate, type SeatPlace } from '../reasons/present-slate';
import { moreMinutes } from '../reasons/remedy';
import { HARD_RULES } from '../rules/registry';
import { smallestCover } from './set-cover';
import { type SeatStandIns } from './stand-ins';

/** How a reserve would cover a seat. */
export type ReserveWay =
  /** They are asked to keep the time of its duty free, although they are not available then. */
  | { readonly kind: 'keeps-free'; readonly moreMinutes: number }
  /** They leave a seat of their own, which somebody else may take. */
  | { readonly kind: 'exchange'; readonly gives: SeatPlace; readonly to: string };

export interface Reserve {
  readonly official: string;
  readonly covers: readonly { readonly place: SeatPlace; readonly way: ReserveWay }[];
}

/** The fewest reserves, so that whichever single seat without a stand-in loses its holder, one of them can take it. */
export interface ReservePlan {
  readonly reserves: readonly Reserve[];
  /** Seats without a stand-in that no reserve could take either. */
  readonly uncovered: readonly SeatPlace[];
  /** No plan has fewer reserves; equal to their number when the plan is proven smallest. */
  readonly atLeast: number;
}

interface Cover {
  readonly row: number;
  readonly way: ReserveWay;
}

/** `standIns` are those of the same slate; filled seats that nobody could take alone are to be covered. */
export function planReserves(present: PresentSlate, standIns: readonly SeatStandIns[]): ReservePlan {
  const { slate, holders } = present;
  const rows = standIns.filter(({ seat, alone }) => holders[seat] !== NOBODY && alone.length === 0);
  const coversOf = new Map<number, Cover[]>();
  const addCover = (official: number, cover: Cover) => {
    const covers = coversOf.get(official);
    if (covers === undefined) coversOf.set(official, [cover]);
    else covers.push(cover);
  };
  const review = new ChangeReview(slate, holders);
  rows.forEach(({ seat, withOneMore }, row) => {
    for (const { official, gives, to } of withOneMore) {
      const way = { kind: 'exchange', gives: placeOfSeat(slate, gives), to: idOfHolder(slate, to)! } as const;
      addCover(official, { row, way });
    }
    for (let official = 0; official < slate.officialCount; official++) {
      const minutes = minutesToKeepFree(present, review, seat, official);
      if (minutes !== null) addCover(official, { row, way: { kind: 'keeps-free', moreMinutes: minutes } });
    }
  });
  const officials = [...coversOf.keys()].sort((a, b) => a - b);
  const { chosen, atLeast } = smallestCover(
    rows.length,
    officials.map((official) => coversOf.get(official)!.map(({ row }) => row)),
  );
  const covered = new Set(officials.flatMap((official) => coversOf.get(official)!.map(({ row }) => row)));
  return {
    reserves: chosen.map((index) => ({
      official: slate.officialIds[officials[index]!]!,
      covers: coversOf
        .get(officials[index]!)!
        .map(({ row, way }) => ({ place: placeOfSeat(slate, rows[row]!.seat), way })),
    })),
    uncovered: rows.filter((_, row) => !covered.has(row)).map(({ seat }) => placeOfSeat(slate, seat)),
    atLeast,
  };
}

/** How much longer the official would have to be free; null when something else is in the way, or nothing. */
function minutesToKeepFree(
  { problem, slate }: PresentSlate,
  review: ChangeReview,
  seat: number,
  official: number,
): number | null {
  if (review.holders[seat] === official) return null;
  const failed = HARD_RULES.filter((rule) => (rule.onSeat?.(slate, official, seat) ?? null) !== null);
  if (failed.length !== 1 || failed[0]!.id !== 'H2') return null;
  const reasons = review.newViolations([{ seat, holder: official }]);
  // A lock on the seat was its holder's; it goes with them.
  if (!reasons.every(({ rule }) => rule === 'H2' || rule === 'H6')) return null;
  const game = seat >> 1;
  const window = {
    from: new Date(slate.dutyFromMs[game]!).toISOString(),
    to: new Date(slate.dutyToMs[game]!).toISOString(),
  };
  const id = slate.officialIds[official]!;
  const minutes = moreMinutes(
    problem.officials.find((own) => own.id === id)!,
    window,
  );
  return Math.min(minutes, (slate.dutyToMs[game]! - slate.dutyFromMs[game]!) / MINUTE_MS);
}
