import type { Highs } from 'highs';
import { Lagrangian, PriceAscent, safeBound } from '../bound/lagrangian';
import { type CompiledSlate } from '../compile/compiled-slate';
import { proveOptimum } from '../exact/prove-optimum';
import { type Holders } from '../tours';
import { type ProverNews } from './prover-messages';

export interface ProverOptions {
  readonly slate: CompiledSlate;
  /** Loads the linear solver when it is first needed. */
  readonly loadHighs: () => Promise<Highs>;
  readonly tell: (news: ProverNews) => void;
  /** Fetches what has been found elsewhere since the last call, or null. */
  readonly fetchBetter: () => { readonly holders: Holders; readonly cost: number } | null;
  /** Least cost known anywhere, with or without the slate itself. */
  readonly knownCost: () => number;
  readonly isOver: () => boolean;
}

/** Price steps between two looks at the rest of the world. */
const STEPS_AT_A_TIME = 8;
/** A bound this much better, as a share of the cost, is worth telling. */
const WORTH_TELLING = 1e-6;
/** A proof is tried again when the way from bound to best slate has become this much shorter. */
const RETRY_SHARE = 0.9;
/** Slates with more games are out of reach of a proof of optimality, unless the bound already meets the cost. */
const PROOF_GAMES_MAX = 120;

/** Prices are raised anew until that closes less than this share of the gap. */
const AGAIN_GAIN_MIN = 0.005;

/** Raises the bound, and proves the cheapest slate where the slate is small enough. */
export class Prover {
  private best: { readonly holders: Holders; readonly cost: number };
  private bound = -Infinity;
  private readonly lagrangian: Lagrangian;
  private ascent: PriceAscent;

  constructor(
    private readonly options: ProverOptions,
    start: { readonly holders: Holders; readonly cost: number },
  ) {
    this.best = start;
    this.lagrangian = new Lagrangian(options.slate);
    this.ascent = new PriceAscent(this.lagrangian);
  }

  /** Raises prices so often and no further. */
  raise(priceSteps: number): void {
    while (this.ascent.steps < priceSteps && !this.ascent.settled && !this.options.isOver() && !this.isProven)
      this.climb();
  }

  /** Works until the optimum is proven or time is up; true when it is proven. */
  async run(): Promise<boolean> {
    let triedAtGap = Infinity;
    let boundBefore = -Infinity;
    while (!this.options.isOver()) {
      for (let step = 0; step < STEPS_AT_A_TIME && !this.ascent.settled; step++) this.climb();
      this.takeBetter();
      if (this.isProven) return true;
      if (!this.ascent.settled) {
        await new Promise((resume) => setImmediate(resume));
        continue;
      }
      const gap = this.best.cost - this.ascent.best;
      const mayProve = this.options.slate.gameCount <= PROOF_GAMES_MAX;
      if (mayProve && gap < RETRY_SHARE * triedAtGap) {
        triedAtGap = gap;
        if (await this.prove()) return true;
        continue;
      }
      if (this.ascent.best - boundBefore < AGAIN_GAIN_MIN * gap && !mayProve) return false;
      boundBefore = this.ascent.best;
      this.ascent = this.ascent.again();
    }
    return this.isProven;
  }

  private climb(): void {
    this.ascent.step(Math.min(this.best.cost, this.options.knownCost()));
    this.raiseBound(safeBound(this.ascent.best, this.best.cost));
  }

  private async prove(): Promise<boolean> {
    const highs = await this.options.loadHighs();
    const outcome = proveOptimum(this.lagrangian, this.ascent.bestPrices, {
      highs,
      best: () => {
        this.takeBetter();
        return this.best;
      },
      isOver: this.options.isOver,
      onBound: (bound) => this.raiseBound(bound),
      onSlate: (holders, cost) => {
        this.best = { holders, cost };
        this.options.tell({ kind: 'slate', holders, cost });
      },
    });
    if (outcome.kind !== 'proven') return false;
    this.bound = this.best.cost - PROVEN_MARGIN * Math.max(1, Math.abs(this.best.cost));
    this.options.tell({ kind: 'bound', bound: this.bound });
    return true;
  }

  private takeBetter(): void {
    const better = this.options.fetchBetter();
    if (better !== null && better.cost < this.best.cost) this.best = better;
  }

  private raiseBound(bound: number): void {
    if (bound <= this.bound + WORTH_TELLING * Math.abs(this.best.cost)) return;
    this.bound = bound;
    this.options.tell({ kind: 'bound', bound });
  }

  private get isProven(): boolean {
    return this.bound >= this.best.cost - OPTIMAL_WITHIN * Math.max(1, Math.abs(this.best.cost));
  }
}

/** A proven optimum's bound is stated this far below its cost, to be on the safe side of rounding. */
const PROVEN_MARGIN = 4e-7;
/** What the answer format calls optimal. */
const OPTIMAL_WITHIN = 1e-6;
