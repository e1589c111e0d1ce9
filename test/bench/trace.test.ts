// Goal: the benchmark's figures mean what its tables say. Method: a run of three points, worked out by hand.
import { gapPlot } from './gap-plot';
import { table } from './table';
import { gapAt, markOf, provenGap, secondsToGap, type Trace } from './trace';

const end = { seconds: 9, total: 1100, open: 100, bound: 1050, proven: false, peakMegabytes: 80 };
const trace: Trace = {
  points: [
    { seconds: 1, cost: 1600, bound: null },
    { seconds: 4, cost: 1110, bound: 900 },
    { seconds: 8, cost: 1100, bound: 1050 },
  ],
  end,
};
const other: Trace = { points: [{ seconds: 2, cost: 1150, bound: null }], end: { ...end, total: 1150 } };
const nothing: Trace = { points: [], end: null };

it('measures gaps against the best of all runs, as shares of its cost without open seats', () => {
  const mark = markOf([other, nothing, trace])!;
  expect(mark).toEqual({ total: 1100, quality: 1000 });
  expect(gapAt(trace, mark, 0.5)).toBe(Infinity);
  expect(gapAt(trace, mark, 4)).toBeCloseTo(0.01, 12);
  expect(gapAt(other, mark, 99)).toBeCloseTo(0.05, 12);
  expect([0.5, 0.05, 0.01, 0].map((gap) => secondsToGap(trace, mark, gap))).toEqual([1, 4, 4, 8]);
  expect(secondsToGap(other, mark, 0.01)).toBeNull();
  expect(markOf([nothing])).toBeNull();
});

it('takes the proven gap from the run itself', () => {
  expect(provenGap(trace)).toBeCloseTo(0.05, 12);
  expect(provenGap(nothing)).toBeNull();
  expect(provenGap({ ...trace, end: { ...end, bound: -Infinity } })).toBeNull();
});

it('draws better slates further down, and writes tables in columns', () => {
  const mark = markOf([trace])!;
  const svg = gapPlot([{ label: 'a < b', trace, mark, dashed: false }], 10);
  const heights = /<polyline points="([^"]*)"/
    .exec(svg)![1]!
    .split(' ')
    .map((at) => Number(at.split(',')[1]));
  expect(heights).toHaveLength(3);
  expect(heights).toEqual([...heights].sort((a, b) => a - b));
  expect(svg).toContain('a &lt; b');
  expect(table(['name', 'n'], [['x', '10']])).toBe('name   n\n----  --\nx     10');
});
