/** How one run stood at a moment; seconds count from the start of its process. */
export interface TracePoint {
  readonly seconds: number;
  readonly cost: number;
  readonly bound: number | null;
}

/** What a benchmarked run came to; its slate was judged by the independent checker. */
export interface RunEnd {
  readonly seconds: number;
  readonly total: number;
  /** The part of the total that open seats cost. */
  readonly open: number;
  readonly bound: number | null;
  readonly proven: boolean;
  readonly peakMegabytes: number;
}

export interface Trace {
  readonly points: readonly TracePoint[];
  /** Null for a run that found no slate in its time. */
  readonly end: RunEnd | null;
}

export type RunNews = { readonly point: TracePoint } | { readonly end: RunEnd };

/** What gaps are measured against: the best slate that any method found in this run of the benchmark. */
export interface Mark {
  readonly total: number;
  /** Its cost without open seats; gaps are shares of it. */
  readonly quality: number;
}

export function markOf(traces: readonly Trace[]): Mark | null {
  const ends = traces.flatMap(({ end }) => (end === null ? [] : [end]));
  const best = ends.reduce<RunEnd | null>((b, e) => (b === null || e.total < b.total ? e : b), null);
  return best === null ? null : { total: best.total, quality: Math.max(1e-9, best.total - best.open) };
}

/** How far the run was from the mark at a moment, as a share of its quality cost; Infinity before a first slate. */
export function gapAt(trace: Trace, mark: Mark, seconds: number): number {
  let cost = Infinity;
  for (const point of trace.points) if (point.seconds <= seconds) cost = Math.min(cost, point.cost);
  return Math.max(0, cost - mark.total) / mark.quality;
}

/** The first moment at which the run was within `gap` of the mark; null when it never was. */
export function secondsToGap(trace: Trace, mark: Mark, gap: number): number | null {
  const limit = mark.total + gap * mark.quality + 1e-6 * Math.max(1, mark.total);
  return trace.points.find(({ cost }) => cost <= limit)?.seconds ?? null;
}

/** The gap that the run itself proved, as a share of its quality cost; null without a bound. */
export function provenGap({ end }: Trace): number | null {
  if (end === null || end.bound === null || !Number.isFinite(end.bound)) return null;
  return Math.max(0, end.total - end.bound) / Math.max(1e-9, end.total - end.open);
}
