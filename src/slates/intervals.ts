/** From `from` (inclusive) to `to` (exclusive), milliseconds since 1970. */
export interface Interval {
  readonly from: number;
  readonly to: number;
}

/** In order, without overlaps; intervals that touch become one, empty ones fall away. */
export function mergeIntervals(intervals: readonly Interval[]): Interval[] {
  const merged: Interval[] = [];
  const sorted = intervals.filter(({ from, to }) => from < to).sort((left, right) => left.from - right.from);
  for (const interval of sorted) {
    const last = merged.at(-1);
    if (last !== undefined && interval.from <= last.to) {
      merged[merged.length - 1] = { from: last.from, to: Math.max(last.to, interval.to) };
    } else {
      merged.push({ from: interval.from, to: interval.to });
    }
  }
  return merged;
}

/** What is left of `intervals`, merged, when every one of `cuts` is taken out. */
export function subtractIntervals(intervals: readonly Interval[], cuts: readonly Interval[]): Interval[] {
  let left = mergeIntervals(intervals);
  for (const cut of mergeIntervals(cuts)) {
    left = left.flatMap((interval) => {
      if (cut.to <= interval.from || interval.to <= cut.from) return [interval];
      const before = { from: interval.from, to: cut.from };
      const after = { from: cut.to, to: interval.to };
      return [before, after].filter(({ from, to }) => from < to);
    });
  }
  return left;
}

/** Whether `part` lies wholly in one of `merged`. */
export function liesWithin(part: Interval, merged: readonly Interval[]): boolean {
  return merged.some((interval) => interval.from <= part.from && part.to <= interval.to);
}
