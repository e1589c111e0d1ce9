import { type Mark, type Trace, gapAt } from './trace';

export interface GapCurve {
  readonly label: string;
  readonly trace: Trace;
  readonly mark: Mark;
  readonly dashed: boolean;
}

const WIDTH = 860;
const HEIGHT = 460;
const LEFT = 70;
const RIGHT = 190;
const TOP = 40;
const BOTTOM = 50;
/** Gaps from 0.01 % to 100 %; what lies outside is drawn on the edge. */
const LEAST = 1e-4;
const DECADES = 4;
const COLOURS = ['#1b6ca8', '#c8553d', '#3d8b5f', '#7a4ea3', '#b0892e', '#4a4a4a', '#a83279', '#2f9fa8'];

/** Gap to the best slate of the benchmark over time: logarithmic upwards, plain seconds to the right. */
export function gapPlot(curves: readonly GapCurve[], seconds: number): string {
  const x = (at: number) => LEFT + (Math.min(at, seconds) / seconds) * (WIDTH - LEFT - RIGHT);
  const y = (gap: number) => {
    const decades = Math.log10(Math.max(gap, LEAST) / LEAST);
    return HEIGHT - BOTTOM - (Math.min(decades, DECADES) / DECADES) * (HEIGHT - TOP - BOTTOM);
  };
  const text = (at: [number, number], words: string, more = '') =>
    `<text x="${at[0]}" y="${at[1]}" ${more}>${words.replaceAll('&', '&amp;').replaceAll('<', '&lt;')}</text>`;
  const parts: string[] = [];
  for (let decade = 0; decade <= DECADES; decade++) {
    const gap = LEAST * 10 ** decade;
    parts.push(`<line x1="${LEFT}" x2="${WIDTH - RIGHT}" y1="${y(gap)}" y2="${y(gap)}" stroke="#ddd"/>`);
    parts.push(text([LEFT - 8, y(gap) + 4], `${100 * gap} %`, 'text-anchor="end"'));
  }
  for (let tick = 0; tick <= 5; tick++) {
    const at = (seconds * tick) / 5;
    parts.push(text([x(at), HEIGHT - BOTTOM + 20], `${Number(at.toFixed(1))} s`, 'text-anchor="middle"'));
  }
  curves.forEach(({ label, trace, mark, dashed }, i) => {
    const colour = COLOURS[i % COLOURS.length]!;
    const dash = dashed ? ' stroke-dasharray="5 4"' : '';
    const path = trace.points
      .filter((point) => point.seconds <= seconds)
      .map((point) => `${x(point.seconds).toFixed(1)},${y(gapAt(trace, mark, point.seconds)).toFixed(1)}`);
    parts.push(
      `<polyline points="${path.join(' ')}" fill="none" stroke="${colour}" stroke-width="2"${dash}/>`,
    );
    const at = TOP + 16 * i;
    parts.push(
      `<line x1="${WIDTH - RIGHT + 12}" x2="${WIDTH - RIGHT + 36}" y1="${at}" y2="${at}" stroke="${colour}" stroke-width="2"${dash}/>`,
      text([WIDTH - RIGHT + 42, at + 4], label),
    );
  });
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}" font-family="sans-serif" font-size="12">`,
    `<rect width="${WIDTH}" height="${HEIGHT}" fill="#fff"/>`,
    text([LEFT, 22], 'Distance to the best slate of this run (share of its cost without open seats)'),
    ...parts,
    '</svg>\n',
  ].join('\n');
}
