import { type CostBreakdown } from '../answer';
import { type CompiledSlate } from '../compile';
import { NOBODY, SEAT_FREE, SEAT_KEPT_OPEN } from '../compile/facts';
import { priceSlate } from '../costs/price-slate';
import { judgeLocks, judgeSlate } from '../rules/judge-slate';
import { type CoolingSchedule } from '../search/acceptance';
import { ChangeList } from '../search/change-list';
import { fillGreedily } from '../search/construct';
import { ControlBlock } from '../search/control-block';
import { SeatCandidates } from '../search/seat-candidates';
import { SlateState } from '../search/slate-state';
import { startSlate } from '../search/start-slate';
import { StintRunner } from '../search/stint';
import { type Holders } from '../tours';
import { undoIdleMoves } from './undo-idle-moves';

/** How long to solve again; by steps alone the result depends on no clock. */
export interface SolveAgainOptions {
  /** Steps of search. */
  readonly steps: number;
  /** Any whole number; default 1. */
  readonly seed?: number;
  /** Asked every few thousand steps: whether to stop and take the best so far. */
  readonly isOver?: () => boolean;
  /** Disturb little: only what pays at once is moved. Default: look further for a cheaper slate. */
  readonly gentle?: boolean;
}

export interface SolvedSlate {
  readonly holders: Holders;
  readonly cost: CostBreakdown;
  readonly openSeats: number;
}

/**
 * Cool at first: what is good about the slate at hand stays, and only what pays is moved. Then warmer, from the
 * best so far, for what a few moves do not find.
 */
const PASSES: readonly { readonly cooling: CoolingSchedule; readonly share: number }[] = [
  { cooling: { hot: 4, cold: 0.4 }, share: 0.2 },
  { cooling: { hot: 15, cold: 0.4 }, share: 0.3 },
  { cooling: { hot: 40, cold: 0.4 }, share: 0.5 },
];
const GENTLE_PASSES: typeof PASSES = [{ cooling: { hot: 0.5, cold: 0.1 }, share: 1 }];

/**
 * Solves a changed problem from a slate of the unchanged one: takes over all of it that is still legal, fills
 * what it can, and searches on from there. Null when the locks cannot be kept legally.
 */
export function solveAgain(
  slate: CompiledSlate,
  present: Holders,
  { steps, seed = 1, isOver, gentle = false }: SolveAgainOptions,
): SolvedSlate | null {
  const start = carryOver(slate, present);
  if (start === null) return null;
  const control = new ControlBlock(undefined, 1);
  const runner = new StintRunner(slate, control, 0, seed);
  let best = { holders: start, cost: priceSlate(slate, start).total };
  for (const { cooling, share } of gentle ? GENTLE_PASSES : PASSES) {
    const length = { steps: Math.round(steps * share) };
    const run = runner.run({ holders: best.holders, region: null, cooling, length });
    for (;;) {
      if (isOver?.() === true) control.cancel();
      const step = run.next();
      if (step.done !== true) continue;
      const cost = priceSlate(slate, step.value.best).total;
      if (cost < best.cost) best = { holders: step.value.best, cost };
      break;
    }
  }
  return solvedSlate(slate, undoIdleMoves(slate, start, best.holders));
}

/** Priced from scratch. */
export function solvedSlate(slate: CompiledSlate, holders: Holders): SolvedSlate {
  return { holders, cost: priceSlate(slate, holders), openSeats: countOpen(slate, holders) };
}

/** Open seats that are not kept open on purpose. */
export function countOpen(slate: CompiledSlate, holders: Holders): number {
  return holders.reduce(
    (open, holder, seat) => open + (holder === NOBODY && slate.seatLock[seat] !== SEAT_KEPT_OPEN ? 1 : 0),
    0,
  );
}

/**
 * The locks, then game by game whatever of the present slate stands legally beside what is there already,
 * then whatever fits. Null when the locks cannot be kept legally.
 */
export function carryOver(slate: CompiledSlate, present: Holders): Holders | null {
  if (judgeLocks(slate).length > 0) return null;
  const state = new SlateState(
    slate,
    slate.seatLock.map((lock) => (lock >= 0 ? lock : NOBODY)),
  );
  const changes = new ChangeList();
  const take = (seats: readonly number[]): boolean => {
    changes.clear();
    for (const seat of seats) {
      const mayTake = slate.seatLock[seat] === SEAT_FREE && state.holders[seat] === NOBODY;
      if (mayTake && present[seat] !== NOBODY) changes.add(seat, present[seat]!);
    }
    if (changes.count === 0) return true;
    const delta = state.evaluate(changes);
    if (delta === Infinity) return false;
    state.apply(changes, delta);
    return true;
  };
  for (let game = 0; game < slate.gameCount; game++) {
    // A crew is taken over whole where that is possible, because a minor cannot come alone.
    if (!take([2 * game, 2 * game + 1]) && !take([2 * game])) take([2 * game + 1]);
  }
  fillGreedily(state, new SeatCandidates(slate));
  if (judgeSlate(slate, state.holders).length === 0) return state.holders.slice();
  // Locked minors whose partners went elsewhere, or ways longer than their detours: begin afresh.
  const start = startSlate(slate);
  return start.ok ? start.holders : null;
}
