import { type TimeWindow } from '../problem';
import { sharedFloat64, sharedInt32 } from './arrays';

/** Windows of many officials, end to end: those of official o are start[o] … start[o + 1] − 1. */
export interface CompiledWindows {
  readonly start: Int32Array;
  readonly fromMs: Float64Array;
  readonly toMs: Float64Array;
}

interface Span {
  readonly fromMs: number;
  toMs: number;
}

/** Sorts each official's windows and joins those that touch or overlap. */
export function compileWindows(windowsByOfficial: readonly (readonly TimeWindow[])[]): CompiledWindows {
  const merged = windowsByOfficial.map(mergeWindows);
  const start = sharedInt32(merged.length + 1);
  merged.forEach((spans, o) => (start[o + 1] = start[o]! + spans.length));
  const fromMs = sharedFloat64(start[merged.length]!);
  const toMs = sharedFloat64(start[merged.length]!);
  merged.forEach((spans, o) =>
    spans.forEach((span, i) => {
      fromMs[start[o]! + i] = span.fromMs;
      toMs[start[o]! + i] = span.toMs;
    }),
  );
  return { start, fromMs, toMs };
}

function mergeWindows(windows: readonly TimeWindow[]): Span[] {
  const spans = windows
    .map((window): Span => ({ fromMs: Date.parse(window.from), toMs: Date.parse(window.to) }))
    .sort((a, b) => a.fromMs - b.fromMs || a.toMs - b.toMs);
  const merged: Span[] = [];
  for (const span of spans) {
    const last = merged.at(-1);
    if (last !== undefined && span.fromMs <= last.toMs) last.toMs = Math.max(last.toMs, span.toMs);
    else merged.push(span);
  }
  return merged;
}
