import { type Assignment, type CostBreakdown, type Violation } from '../answer';
import { compileSlate, type CompiledSlate } from '../compile';
import { priceSlate } from '../costs/price-slate';
import { type SlateProblem } from '../problem';
import { readAssignments, writeAssignments } from '../assignments';
import { defaultSeconds, type SolveOptions } from '../solve/solve-options';
import { solveSlate } from '../solve/solve-slate';
import { type StintLength } from '../search/stint';
import { AS_WEIGHTED, type Emphasis } from './emphasis';
import { Front, type FrontSlate } from './front';
import { nextEmphases } from './next-emphases';
import { EmphasisSearch } from './emphasis-search';

export interface TradeOffOptions extends Omit<SolveOptions, 'onProgress'> {
  /**
   * The slate built with the problem's own weights, when there is one; legal, every game once. Otherwise it is
   * built first, in the time of one build, and the proposals take as long again.
   */
  readonly base?: readonly Assignment[];
  /** Default 7, at least 5. */
  readonly proposalsMax?: number;
  /** Told after each search how many proposals there are. */
  readonly onProgress?: (proposals: number) => void;
}

/** One real slate on the front between driving, development and fairness. */
export interface TradeOffProposal {
  /** What it was searched for; 1 everywhere for the base. */
  readonly emphasis: Emphasis;
  readonly isBase: boolean;
  readonly assignments: readonly Assignment[];
  /** At the problem's own weights. */
  readonly cost: CostBreakdown;
}

export type TradeOffs =
  /**
   * By kilometres driven, fewest first. None is beaten by another in all of driving (`travel`), development
   * (`pairing` and `overLevel`) and fairness (`balance`), and none costs more open seats than the base. Five or
   * more, unless the slate leaves no such choice.
   */
  | { readonly ok: true; readonly proposals: readonly TradeOffProposal[] }
  | { readonly ok: false; readonly lockViolations: readonly Violation[] };

const PROPOSALS_DEFAULT = 7;
/** Searches beside the base; more than proposals, for some turn out to be beaten. */
const SEARCHES = 10;

/**
 * Looks for slates that weigh driving, development and fairness differently. Each search sets out from a slate
 * found for similar weights; after the extremes, the widest gap of the front is searched next.
 */
export async function tradeOffs(problem: SlateProblem, options: TradeOffOptions): Promise<TradeOffs> {
  const { base: given, proposalsMax = PROPOSALS_DEFAULT, onProgress, ...solveOptions } = options;
  const base = given === undefined ? await solveSlate(problem, solveOptions) : null;
  if (base?.status === 'infeasible') return { ok: false, lockViolations: base.lockViolations ?? [] };

  const slate = compileSlate(problem);
  const holders = readAssignments(slate, given ?? base!.assignments);
  const front = new Front({ holders, cost: priceSlate(slate, holders), emphasis: AS_WEIGHTED });
  const lengthOf = lengthOfShares(options, slate.gameCount);
  const threads = Math.max(1, Math.floor(options.threads ?? 1));
  for (let done = 0; done < SEARCHES && options.signal?.aborted !== true;) {
    const emphases = nextEmphases(front, done, Math.min(threads, SEARCHES - done));
    if (emphases.length === 0) break;
    const search = new EmphasisSearch(slate, options);
    const length = lengthOf(done / SEARCHES, (done + emphases.length) / SEARCHES);
    for (const found of await search.run(front, emphases, length)) front.add(found);
    done += emphases.length;
    onProgress?.(front.all().length);
  }
  const chosen = front.spread(Math.max(5, proposalsMax));
  return { ok: true, proposals: describe(problem, slate, chosen) };
}

/** The searches take the time, or the steps, of one build in equal shares. */
function lengthOfShares(
  options: TradeOffOptions,
  games: number,
): (fromShare: number, toShare: number) => StintLength {
  const { steps, base, startedAtSeconds } = options;
  if (steps !== undefined) return (from, to) => ({ steps: Math.ceil(steps * (to - from)) });
  const begin = options.nowSeconds();
  const seconds = options.seconds ?? defaultSeconds(games);
  const latest =
    startedAtSeconds === undefined ? Infinity : startedAtSeconds + (base === undefined ? 2 : 1) * seconds;
  const end = Math.min(begin + seconds, latest) - finishingSeconds(games);
  return (_from, to) => ({ endSeconds: begin + Math.max(0, end - begin) * to });
}

/** Pricing and writing the proposals, in seconds. */
function finishingSeconds(games: number): number {
  return 0.05 + games * 2e-4;
}

function describe(
  problem: SlateProblem,
  slate: CompiledSlate,
  slates: readonly FrontSlate[],
): readonly TradeOffProposal[] {
  return slates
    .map(({ holders, cost, emphasis }, index) => ({
      emphasis,
      isBase: index === 0,
      assignments: writeAssignments(problem, slate, holders),
      cost,
    }))
    .sort((a, b) => a.cost.travel - b.cost.travel);
}
