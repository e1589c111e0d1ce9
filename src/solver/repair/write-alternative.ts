import { COST_TERMS, type CostBreakdown } from '../answer';
import { type CompiledSlate } from '../compile/compiled-slate';
import { NOBODY, SEAT_KEPT_OPEN } from '../compile/facts';
import { priceSlate } from '../costs/price-slate';
import { SEAT_NAMES, type SlateProblem } from '../problem';
import { type Holders } from '../tours';
import { writeAssignments } from '../assignments';
import { listCalls } from './list-calls';
import { type RepairAlternative, type SeatOfGame } from './repair-report';

/** What every alternative is described against. */
export interface RepairSetting {
  readonly problem: SlateProblem;
  readonly slate: CompiledSlate;
  readonly published: Holders;
  readonly publishedCost: CostBreakdown;
  readonly brokenSeats: ReadonlySet<number>;
  /** Broken seats whose holder withdrew. */
  readonly excusedSeats: ReadonlySet<number>;
  readonly addedGames: ReadonlySet<number>;
}

/** Describes a slate as an answer to what happened. */
export function writeAlternative(
  setting: RepairSetting,
  kind: RepairAlternative['kind'],
  holders: Holders,
): RepairAlternative {
  const { problem, slate, published, publishedCost, brokenSeats, excusedSeats } = setting;
  const calls = listCalls(
    published,
    holders,
    (seat) => brokenSeats.has(seat),
    (seat) => excusedSeats.has(seat),
  );
  const cost = priceSlate(slate, holders);
  const seatOrNull = (seat: number) => (seat < 0 ? null : nameSeat(slate, seat));
  return {
    kind,
    people: [...new Set(calls.map(({ official }) => official))]
      .sort((a, b) => a - b)
      .map((official) => slate.officialIds[official]!),
    calls: calls.map(({ official, leaves, takes }) => ({
      official: slate.officialIds[official]!,
      leaves: seatOrNull(leaves),
      takes: seatOrNull(takes),
    })),
    openSeats: [...holders.keys()]
      .filter((seat) => isLeftOpen(setting, holders, seat))
      .map((seat) => nameSeat(slate, seat)),
    assignments: writeAssignments(problem, slate, holders),
    cost,
    costChange: difference(cost, publishedCost),
  };
}

export function nameSeat(slate: CompiledSlate, seat: number): SeatOfGame {
  return { game: slate.gameIds[seat >> 1]!, seat: SEAT_NAMES[(seat & 1) as 0 | 1] };
}

/** Open now, though somebody was published for it or its game is new. */
function isLeftOpen(
  { slate, published, addedGames }: RepairSetting,
  holders: Holders,
  seat: number,
): boolean {
  if (holders[seat] !== NOBODY || slate.seatLock[seat] === SEAT_KEPT_OPEN) return false;
  return published[seat] !== NOBODY || addedGames.has(seat >> 1);
}

function difference(after: CostBreakdown, before: CostBreakdown): CostBreakdown {
  const terms = ['total', ...COST_TERMS] as const;
  return Object.fromEntries(terms.map((term) => [term, after[term] - before[term]])) as CostBreakdown;
}
