import { writeFileSync } from 'node:fs';
import { gapPlot, type GapCurve } from './gap-plot';
import { type InstanceSource, loadInstance } from './instances';
import { runTask } from './run-task';
import { percent, seconds, table } from './table';
import { gapAt, markOf, provenGap, secondsToGap, type Mark, type Trace } from './trace';

export interface SolveBench {
  readonly instances: readonly InstanceSource[];
  readonly seconds: number;
  readonly seed: number;
  readonly threads: number;
  readonly svgFile: string | null;
}

/** The plain exact model is given to HiGHS up to this many games; above, it does not get far. */
const HIGHS_GAMES_MAX = 60;
const TARGETS = [0.05, 0.02, 0.01, 0.001];

interface Row {
  readonly name: string;
  readonly method: string;
  readonly trace: Trace;
  readonly mark: Mark | null;
}

/** Quality over time of each instance, beside HiGHS on the plain exact model where that is within its reach. */
export async function benchSolve(bench: SolveBench): Promise<void> {
  const rows: Row[] = [];
  const ratios: string[][] = [];
  for (const instance of bench.instances) {
    const { games, officials } = loadInstance(instance);
    console.error(`${instance.name}: ${games.length} games, ${officials.length} officials`);
    const task = { instance, seconds: bench.seconds, seed: bench.seed, threads: bench.threads };
    const own = await runTask({ ...task, method: 'crewloom' });
    const highs = games.length > HIGHS_GAMES_MAX ? null : await runTask({ ...task, method: 'highs' });
    const mark = markOf(highs === null ? [own] : [own, highs]);
    rows.push({ name: instance.name, method: 'crewloom', trace: own, mark });
    if (highs === null) continue;
    rows.push({ name: instance.name, method: 'HiGHS', trace: highs, mark });
    ratios.push(ratioRow(instance.name, own, highs, mark));
  }
  console.log(`\nFinal cost, and the gap that each run proved itself\n${finalTable(rows)}`);
  console.log(`\nSeconds until within so much of the best of this run\n${targetTable(rows)}`);
  console.log(`\nGap to the best of this run after so many seconds\n${gapTable(rows, bench.seconds)}`);
  if (ratios.length > 0) {
    const header = ['instance', 'to within 1 %', 'to the best cost', 'to the proof'];
    console.log(
      `\nTime of HiGHS over that of crewloom (above 1: crewloom is faster)\n${table(header, ratios)}`,
    );
  }
  if (bench.svgFile !== null) writeFileSync(bench.svgFile, plotOf(rows, bench.seconds));
}

function finalTable(rows: readonly Row[]): string {
  return table(
    ['instance', 'method', 'total', 'open', 'bound', 'proven gap', 'proven', 'seconds', 'MB'],
    rows.map(({ name, method, trace }) => {
      const { end } = trace;
      if (end === null) return [name, method, ...Array.from({ length: 7 }, () => '–')];
      return [
        name,
        method,
        end.total.toFixed(1),
        end.open.toFixed(0),
        end.bound === null ? '–' : end.bound.toFixed(1),
        percent(provenGap(trace)),
        end.proven ? 'yes' : 'no',
        seconds(end.seconds),
        end.peakMegabytes.toFixed(0),
      ];
    }),
  );
}

function targetTable(rows: readonly Row[]): string {
  return table(
    ['instance', 'method', ...TARGETS.map((target) => `${100 * target} %`), 'best'],
    rows.map(({ name, method, trace, mark }) => [
      name,
      method,
      ...[...TARGETS, 0].map((target) => seconds(mark && secondsToGap(trace, mark, target))),
    ]),
  );
}

function gapTable(rows: readonly Row[], limit: number): string {
  const moments = [1, 2, 5, 10, 20, 30, 60, 120, 300, 600].filter((at) => at < limit).concat(limit);
  return table(
    ['instance', 'method', ...moments.map((at) => `${at} s`)],
    rows.map(({ name, method, trace, mark }) => [
      name,
      method,
      ...moments.map((at) => percent(mark && gapAt(trace, mark, at))),
    ]),
  );
}

function ratioRow(name: string, own: Trace, highs: Trace, mark: Mark | null): string[] {
  const timeTo = (trace: Trace, target: number) => mark && secondsToGap(trace, mark, target);
  const proof = ({ end }: Trace) => (end?.proven === true ? end.seconds : null);
  return [
    name,
    ratio(timeTo(own, 0.01), timeTo(highs, 0.01)),
    ratio(timeTo(own, 0), timeTo(highs, 0)),
    ratio(proof(own), proof(highs)),
  ];
}

function ratio(own: number | null, highs: number | null): string {
  if (own === null) return highs === null ? 'neither' : 'HiGHS alone';
  return highs === null ? 'crewloom alone' : (highs / own).toFixed(2);
}

function plotOf(rows: readonly Row[], limit: number): string {
  const curves = rows.flatMap(({ name, method, trace, mark }): GapCurve[] =>
    mark === null ? [] : [{ label: `${name} ${method}`, trace, mark, dashed: method === 'HiGHS' }],
  );
  return gapPlot(curves, limit);
}
