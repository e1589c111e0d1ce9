import type { Highs } from 'highs';
import { Lagrangian } from '../bound/lagrangian';
import { type CompiledSlate } from '../compile';
import { NOBODY } from '../compile/facts';
import { priceSlate } from '../costs/price-slate';
import { type Holders } from '../tours';
import { chooseWeekends, INFEASIBLE_MODEL, OPTIMAL_MODEL, takeSeats, weekendsOf } from './choose-weekends';
import { noWeekends, WeekendEnumeration } from './enumerate-weekends';
import { brokenSubsetRows, type SubsetRow } from './subset-rows';
import { crewOptions, weekendModel, type CrewOption, type PartnerRow } from './weekend-model';
import { keepWeekends, poolOf, type WeekendPool } from './weekend-pool';

/** Weekends are listed up to this many; beyond it the proof is out of reach for now. */
const WEEKENDS_MAX = 400_000;
const CUTS_PER_ROUND = 60;
const CUTS_MAX = 700;
/** Share of the gap that a round of cuts must close to be worth another. */
const ROUND_GAIN_MIN = 0.01;
/** The first search looks this far from the relaxation towards the best slate known, as a share of the way. */
const FIRST_SHARE = 0.125;
/** Shares this near to 0 or 1 are whole. */
const WHOLE = 1e-6;

/** What a proof needs from outside, and whom it tells. */
export interface ProofSetting {
  readonly highs: Highs;
  /** The best slate known at this moment. */
  readonly best: () => { readonly holders: Holders; readonly cost: number };
  readonly isOver: () => boolean;
  readonly onBound: (bound: number) => void;
  readonly onSlate: (holders: Holders, cost: number) => void;
}

export type ProofOutcome =
  /** The best slate known, or the one told last, is the cheapest there is. */
  | { readonly kind: 'proven' }
  /** Too many weekends are still possible at this distance between bound and best slate. */
  | { readonly kind: 'too-many' }
  | { readonly kind: 'interrupted' };

/**
 * Proves the cheapest slate, from prices whose bound is near enough to a known slate that all weekends which
 * could be part of a cheaper one can be listed. The linear relaxation over them is tightened by subset-row
 * cuts, each rise of the bound rules weekends out by their reduced cost, and a branch-and-cut search over
 * what is left settles the rest.
 */
export function proveOptimum(
  lagrangian: Lagrangian,
  prices: Float64Array,
  setting: ProofSetting,
): ProofOutcome {
  const { slate } = lagrangian;
  const bound = lagrangian.evaluate(prices);
  const gap = reach(setting.best().cost) - bound;
  const pool = listWeekends(lagrangian, prices, gap);
  if (pool === null) return { kind: 'too-many' };
  const state: ProofState = {
    slate,
    base: bound,
    pool,
    crews: crewOptions(slate, lagrangian.choices, prices, gap),
    partners: partnerRows(lagrangian, prices),
    cuts: [],
    value: bound,
    poolDual: new Float64Array(0),
    crewDual: new Float64Array(0),
  };
  return tighten(state, setting) ?? search(state, setting);
}

interface ProofState {
  readonly slate: CompiledSlate;
  /** What the prices have proven; costs in the model come on top. */
  readonly base: number;
  pool: WeekendPool;
  crews: readonly CrewOption[];
  readonly partners: readonly PartnerRow[];
  cuts: readonly SubsetRow[];
  /** Value of the last linear relaxation, and the reduced costs of pool and crews in it. */
  value: number;
  poolDual: Float64Array;
  crewDual: Float64Array;
}

/** What a slate may cost to be kept in sight: a little above the best, so that rounding never loses that one. */
function reach(bestCost: number): number {
  return bestCost + 2e-7 * Math.max(1, Math.abs(bestCost));
}

/** A bound that stays one whatever rounding and the tolerances of the linear solver did. */
function below(bound: number): number {
  return bound - 3e-7 * Math.max(1, Math.abs(bound));
}

function listWeekends(lagrangian: Lagrangian, prices: Float64Array, gap: number): WeekendPool | null {
  const { slate, stops, pricing } = lagrangian;
  const enumeration = new WeekendEnumeration(slate, stops, prices, lagrangian.fines);
  const weekends = noWeekends();
  const least = new Float64Array(slate.officialCount);
  for (let official = 0; official < slate.officialCount; official++) {
    least[official] = pricing.price(official, prices, lagrangian.fines);
    if (!enumeration.list(official, least[official]! + gap, weekends, WEEKENDS_MAX)) return null;
  }
  return poolOf(weekends, least);
}

function partnerRows(lagrangian: Lagrangian, prices: Float64Array): readonly PartnerRow[] {
  const { stops, partners, seatPriceCount, officialOfStop } = lagrangian;
  return Array.from({ length: partners.count }, (_, row) => ({
    game: stops.game[partners.stopA[row]!]!,
    officialA: officialOfStop[partners.stopA[row]!]!,
    officialB: officialOfStop[partners.stopB[row]!]!,
    price: partners.most[row]!,
    multiplier: prices[seatPriceCount + row]!,
  }));
}

/**
 * Solves the linear relaxation, rules out what its reduced costs allow, and cuts; over and over while it
 * helps. An outcome other than null settles the proof.
 */
function tighten(state: ProofState, setting: ProofSetting): ProofOutcome | null {
  const { slate } = state;
  let valueBefore = -Infinity;
  let poorRounds = 0;
  for (;;) {
    if (setting.isOver()) return { kind: 'interrupted' };
    const solved = setting.highs.withModel((model) => {
      model.options.set({ output_flag: false });
      model.passModel(weekendModel(slate, state));
      const status = model.run().modelStatus;
      return { status, value: model.getObjectiveValue(), solution: model.getSolution() };
    });
    if (solved.status === INFEASIBLE_MODEL) return { kind: 'proven' };
    if (solved.status !== OPTIMAL_MODEL) return { kind: 'interrupted' };
    const value = state.base + solved.value;
    setting.onBound(Math.min(below(value), setting.best().cost));
    const { colValue, colDual, rowDual } = solved.solution;
    const weekendCount = state.pool.official.length;
    const shares = colValue.subarray(0, weekendCount);
    if (shares.every((share) => share < WHOLE || share > 1 - WHOLE)) tellSlate(state, shares, setting);
    const gap = reach(setting.best().cost) - value;
    if (gap <= reach(0)) return { kind: 'proven' };

    const cuts = brokenSubsetRows(slate, state.pool, shares, CUTS_PER_ROUND);
    const cutRowsAt = state.partners.length;
    const binding = state.cuts.filter((_, cut) => Math.abs(rowDual[cutRowsAt + cut]!) > 1e-9);
    state.value = value;
    state.poolDual = colDual.slice(0, weekendCount);
    state.crewDual = colDual.slice(weekendCount, weekendCount + state.crews.length);
    poorRounds = value - valueBefore < ROUND_GAIN_MIN * gap ? poorRounds + 1 : 0;
    valueBefore = value;
    if (cuts.length === 0 || poorRounds >= 3 || state.cuts.length > CUTS_MAX) return null;
    Object.assign(state, within(state, gap));
    state.cuts = [...binding, ...cuts];
  }
}

/** The weekends and crews that slates within `distance` of the relaxation's value can be made of. */
function within(
  { pool, crews, poolDual, crewDual }: ProofState,
  distance: number,
): { readonly pool: WeekendPool; readonly crews: readonly CrewOption[] } {
  // One whose reduced cost is beyond the distance is in no such slate (reduced-cost fixing).
  return {
    pool: keepWeekends(pool, (weekend) => poolDual[weekend]! <= distance),
    crews: crews.filter((_, crew) => crewDual[crew]! <= distance),
  };
}

/**
 * Branch and cut over slates ever further from the relaxation's value. Each search settles whether there is
 * a slate within its distance, among few weekends while the distance is short; most optima are near.
 */
function search(state: ProofState, setting: ProofSetting): ProofOutcome {
  for (let share = FIRST_SHARE; ; share *= 2) {
    const gap = reach(setting.best().cost) - state.value;
    const distance = Math.min(share, 1) * gap;
    const outcome = searchWithin(state, distance, setting);
    if (outcome === 'interrupted') return { kind: 'interrupted' };
    // Nothing cheaper within the distance, and everything beyond it costs more than the best known.
    if (reach(setting.best().cost) <= state.value + distance || share >= 1) return { kind: 'proven' };
    setting.onBound(Math.min(below(state.value + distance), setting.best().cost));
  }
}

function searchWithin(state: ProofState, distance: number, setting: ProofSetting): 'settled' | 'interrupted' {
  const { slate } = state;
  const near: ProofState = { ...state, ...within(state, distance) };
  const enough = state.value + distance;
  let settled = false;
  const outcome = chooseWeekends(slate, near, {
    highs: setting.highs,
    known: weekendsOf(
      near.pool,
      setting.best().holders,
      Array.from({ length: slate.officialCount }, (_, o) => o),
    ),
    onChoice: (shares) => tellSlate(near, shares, setting),
    isEnough: (lowerLimit) => {
      const bound = state.base + lowerLimit;
      if (Number.isFinite(bound))
        setting.onBound(Math.min(below(Math.min(bound, enough)), setting.best().cost));
      settled = bound > enough;
      return settled || setting.isOver();
    },
  });
  return settled || outcome === 'settled' ? 'settled' : 'interrupted';
}

function tellSlate({ slate, pool }: ProofState, shares: Float64Array, setting: ProofSetting): void {
  const holders = new Int32Array(2 * slate.gameCount).fill(NOBODY);
  takeSeats(pool, shares, holders);
  const cost = priceSlate(slate, holders).total;
  if (cost < setting.best().cost) setting.onSlate(holders, cost);
}
