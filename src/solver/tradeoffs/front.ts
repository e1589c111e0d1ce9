import { type CostBreakdown } from '../answer';
import { type Holders } from '../tours';
import { AS_WEIGHTED, dominates, figuresOf, type Emphasis, type Figures } from './emphasis';

/** A slate on its way to a proposal. */
export interface FrontSlate {
  readonly holders: Holders;
  /** At the problem's own weights. */
  readonly cost: CostBreakdown;
  readonly emphasis: Emphasis;
}

/**
 * The slates found so far that cover as many seats as the base and that no other one beats in all three
 * concerns. The base always belongs to them.
 */
export class Front {
  private slates: FrontSlate[];

  constructor(private base: FrontSlate) {
    this.slates = [base];
  }

  /** The base first. */
  all(): readonly FrontSlate[] {
    return [this.base, ...this.slates.filter((slate) => slate !== this.base)];
  }

  add(slate: FrontSlate): void {
    if (slate.cost.open > this.base.cost.open) return;
    // A slate that is cheaper as the problem weighs things is a better base, whatever it was searched for.
    if (slate.cost.total < this.base.cost.total) {
      this.base = { ...slate, emphasis: AS_WEIGHTED };
      this.slates = [
        this.base,
        ...this.slates.filter((other) => !beats(this.base, other) && !isEqual(this.base, other)),
      ];
      this.slates = this.slates.filter((other) => other === this.base || !beats(other, this.base));
      return;
    }
    if (beats(slate, this.base)) return;
    if (this.slates.some((other) => beats(other, slate) || isEqual(other, slate))) return;
    this.slates = [...this.slates.filter((other) => !beats(slate, other)), slate];
  }

  /** The pairs of neighbours that lie farthest apart, the farthest first: edges of the shortest tree over all slates. */
  gaps(): readonly (readonly [FrontSlate, FrontSlate])[] {
    const slates = this.all();
    const distance = distanceAmong(slates);
    const edges: { readonly pair: readonly [FrontSlate, FrontSlate]; readonly length: number }[] = [];
    const joined = [slates[0]!];
    const apart = slates.slice(1);
    while (apart.length > 0) {
      let best = { pair: [joined[0]!, apart[0]!] as const, length: Infinity };
      for (const one of joined) {
        for (const other of apart) {
          const length = distance(one, other);
          if (length < best.length) best = { pair: [one, other], length };
        }
      }
      edges.push(best);
      joined.push(best.pair[1]);
      apart.splice(apart.indexOf(best.pair[1]), 1);
    }
    return edges.sort((a, b) => b.length - a.length).map(({ pair }) => pair);
  }

  /** At most so many, spread over the front: the base, then always the one farthest from those chosen. */
  spread(count: number): readonly FrontSlate[] {
    const rest = [...this.all()];
    const distance = distanceAmong(rest);
    const chosen = rest.splice(0, 1);
    while (chosen.length < count && rest.length > 0) {
      const nearest = rest.map((slate) => Math.min(...chosen.map((other) => distance(slate, other))));
      const [next] = rest.splice(nearest.indexOf(Math.max(...nearest)), 1);
      chosen.push(next!);
    }
    return chosen;
  }
}

function beats(one: FrontSlate, other: FrontSlate): boolean {
  return dominates(figuresOf(one.cost), figuresOf(other.cost));
}

function isEqual(one: FrontSlate, other: FrontSlate): boolean {
  const figures = figuresOf(other.cost);
  return figuresOf(one.cost).every((figure, i) => figure === figures[i]);
}

/** Straight-line distance with each concern scaled to its range among the slates. */
function distanceAmong(slates: readonly FrontSlate[]): (one: FrontSlate, other: FrontSlate) => number {
  const figures = slates.map(({ cost }) => figuresOf(cost));
  const spanOf = (concern: 0 | 1 | 2) => {
    const values = figures.map((figure) => figure[concern]);
    return Math.max(...values) - Math.min(...values);
  };
  const spans: Figures = [spanOf(0), spanOf(1), spanOf(2)];
  return (one, other) => {
    const [a, b] = [figuresOf(one.cost), figuresOf(other.cost)];
    return Math.hypot(...spans.map((span, i) => (span === 0 ? 0 : (a[i]! - b[i]!) / span)));
  };
}
