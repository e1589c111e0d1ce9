import type { Highs } from 'highs';
import { boundMeets, type CostBreakdown } from '../answer';
import { compileSlate, type CompiledSlate } from '../compile';
import { priceSlate } from '../costs/price-slate';
import { withoutOfficial } from '../reasons/changed-problem';
import { type PresentSlate } from '../reasons/present-slate';
import { assertSound, costDifference, listMoves, type SeatMove } from '../reasons/reoptimise-seat';
import { countOpen, solveAgain, solvedSlate, type SolvedSlate } from '../reasons/solve-again';
import { proveWithdrawal } from './prove-withdrawal';
import { withdrawalBounds } from './withdrawal-bounds';

/** The slate once one official works no game of it. */
export interface Withdrawal {
  readonly official: string;
  readonly seatsHeld: number;
  /** The cheapest slate found without them. */
  readonly cost: CostBreakdown;
  /** Against the present slate, by term. */
  readonly change: CostBreakdown;
  readonly openSeats: number;
  readonly moreOpenSeats: number;
  /** No legal slate without them costs less; null when nothing is proven. */
  readonly bound: number | null;
  /** Cost and bound meet: nothing cheaper exists. */
  readonly proven: boolean;
  /** Every seat that changes hands, their own included. */
  readonly moves: readonly SeatMove[];
}

export interface WithdrawalOptions {
  /** The caller's clock, in seconds from any origin; asked only where `seconds` is given. */
  readonly nowSeconds: () => number;
  /** For all officials together; each takes at least one reading of the slate, however little that leaves. */
  readonly seconds?: number;
  /** Steps of search for each official instead of a time; the result then depends on no clock. */
  readonly steps?: number;
  readonly seed?: number;
  /** A proven bound of the present problem, where one is known. */
  readonly presentBound?: number | null;
  /** Loads the linear solver; with it, and within `seconds`, small slates are proven to the optimum. */
  readonly loadHighs?: () => Promise<Highs>;
  readonly onProgress?: (done: number, total: number) => void;
  /** Ends soon, with the officials done so far and those who hold no seat. */
  readonly signal?: AbortSignal;
}

/** Slates with more games are searched and bounded, not proven to the optimum. */
const PROOF_GAMES_MAX = 60;
/** Shares of the time for the common prices, and of each official's time for the search where a proof follows. */
const BOUND_SHARE = 0.12;
const SEARCH_SHARE = 0.3;
const BOUND_STEPS_MAX = 1500;
const BOUND_STEPS_COUNTED = 200;
const ROUND_STEPS = 60_000;
const SECONDS_DEFAULT = 60;

/**
 * Solves the slate again without each official in turn, from the legal slate at hand; those without a seat
 * leave it as it is. The worst come first: by seats that stay open, then by cost.
 */
export async function solveWithdrawals(
  present: PresentSlate,
  options: WithdrawalOptions,
): Promise<readonly Withdrawal[]> {
  const { slate, holders } = present;
  const startedAt = options.steps === undefined ? options.nowSeconds() : 0;
  const allowed = options.seconds ?? SECONDS_DEFAULT;
  const isOverAt = (seconds: number) => () =>
    options.signal?.aborted === true ||
    (options.steps === undefined && options.nowSeconds() - startedAt >= seconds);
  const presentSolved = solvedSlate(slate, holders);
  const bounds = withdrawalBounds(slate, {
    presentCost: presentSolved.cost.total,
    priceSteps: options.steps === undefined ? BOUND_STEPS_MAX : BOUND_STEPS_COUNTED,
    isOver: isOverAt(BOUND_SHARE * allowed),
  });
  const seatsOf = new Int32Array(slate.officialCount);
  for (const holder of holders) if (holder >= 0) seatsOf[holder]!++;
  const working = [...seatsOf.keys()].filter((official) => seatsOf[official]! > 0);
  const withdrawals: Withdrawal[] = [];
  const afterBounds = options.steps === undefined ? options.nowSeconds() - startedAt : 0;
  for (let official = 0; official < slate.officialCount; official++) {
    const isLocked = slate.seatLock.includes(official);
    const known = Math.max(bounds.byOfficial[official]!, options.presentBound ?? -Infinity);
    const bound = isLocked ? null : known;
    if (seatsOf[official] === 0) {
      withdrawals.push(describe(present, slate, presentSolved, { official, seatsHeld: 0, bound }));
      continue;
    }
    if (options.signal?.aborted === true) continue;
    const done = working.indexOf(official);
    const share = (part: number) => afterBounds + ((allowed - afterBounds) * (done + part)) / working.length;
    const proofFollows =
      options.steps === undefined && slate.gameCount <= PROOF_GAMES_MAX && options.loadHighs !== undefined;
    const found = await solveOne(present, official, {
      options,
      bound,
      seatPrices: bounds.seatPrices,
      isSearchOver: isOverAt(share(proofFollows ? SEARCH_SHARE : 1)),
      isOver: isOverAt(share(1)),
      loadHighs: proofFollows ? options.loadHighs : undefined,
    });
    withdrawals.push(
      describe(present, found.compiled, found.solved, {
        official,
        seatsHeld: seatsOf[official]!,
        bound: found.bound,
      }),
    );
    options.onProgress?.(done + 1, working.length);
    await new Promise((resume) => setImmediate(resume));
  }
  return withdrawals.sort((a, b) => b.moreOpenSeats - a.moreOpenSeats || b.change.total - a.change.total);
}

interface OneWithdrawal {
  readonly options: WithdrawalOptions;
  readonly bound: number | null;
  readonly seatPrices: Float64Array;
  readonly isSearchOver: () => boolean;
  readonly isOver: () => boolean;
  readonly loadHighs: (() => Promise<Highs>) | undefined;
}

async function solveOne(
  { problem, slate, holders }: PresentSlate,
  official: number,
  { options, bound, seatPrices, isSearchOver, isOver, loadHighs }: OneWithdrawal,
): Promise<{
  readonly compiled: CompiledSlate;
  readonly solved: SolvedSlate;
  readonly bound: number | null;
}> {
  const changed = withoutOfficial(problem, slate.officialIds[official]!);
  const compiled = compileSlate(changed);
  const seed = options.seed ?? 1;
  const search = (from: Int32Array, steps: number, round: number) => {
    const solved = solveAgain(compiled, from, { steps, seed: seed + round, isOver: isSearchOver });
    // Locks were legal with the official and can only have become fewer, so that a legal slate remains.
    if (solved === null) throw new Error('a withdrawal left no legal slate');
    return solved;
  };
  let solved = search(holders, options.steps ?? ROUND_STEPS, 0);
  for (let round = 1; options.steps === undefined && !isSearchOver(); round++) {
    if (boundMeets(solved.cost.total, bound)) break;
    const next = search(solved.holders, ROUND_STEPS, round);
    if (next.cost.total < solved.cost.total) solved = next;
  }
  let provenBound = bound;
  if (loadHighs !== undefined && !boundMeets(solved.cost.total, bound)) {
    const proof = await proveWithdrawal(compiled, solved, { seatPrices, loadHighs, isOver });
    provenBound = Math.max(proof.bound, bound ?? -Infinity);
    solved = proof.solved;
  }
  assertSound(changed, compiled, solved);
  return { compiled, solved, bound: provenBound };
}

function describe(
  present: PresentSlate,
  compiled: CompiledSlate,
  solved: SolvedSlate,
  {
    official,
    seatsHeld,
    bound,
  }: { readonly official: number; readonly seatsHeld: number; readonly bound: number | null },
): Withdrawal {
  const { slate, holders } = present;
  const presentCost = priceSlate(slate, holders);
  const first = holders.indexOf(official);
  return {
    official: slate.officialIds[official]!,
    seatsHeld,
    cost: solved.cost,
    change: costDifference(solved.cost, presentCost),
    openSeats: solved.openSeats,
    moreOpenSeats: solved.openSeats - countOpen(slate, holders),
    bound,
    proven: boundMeets(solved.cost.total, bound),
    moves: listMoves(compiled, { before: holders, after: solved.holders }, first),
  };
}
