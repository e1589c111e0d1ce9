import { generated, loadInstance } from './instances';
import { runTask } from './run-task';
import { percent, seconds, table } from './table';
import { markOf, provenGap, secondsToGap } from './trace';

export interface GrowthBench {
  readonly sizes: readonly number[];
  readonly seconds: number;
  readonly seed: number;
  readonly threads: number;
}

/** How time and memory grow with the number of games; every row has the same time. */
export async function benchGrowth(bench: GrowthBench): Promise<void> {
  const rows: string[][] = [];
  for (const games of bench.sizes) {
    const instance = generated(`${games} games`, games, bench.seed);
    console.error(instance.name);
    const { officials } = loadInstance(instance);
    const { seconds: limit, seed, threads } = bench;
    const trace = await runTask({ method: 'crewloom', instance, seconds: limit, seed, threads });
    const mark = markOf([trace]);
    rows.push([
      String(games),
      String(officials.length),
      seconds(trace.points[0]?.seconds ?? null),
      seconds(mark && secondsToGap(trace, mark, 0.02)),
      seconds(trace.end?.seconds ?? null),
      trace.end === null ? '–' : trace.end.total.toFixed(0),
      trace.end === null ? '–' : trace.end.open.toFixed(0),
      percent(provenGap(trace)),
      trace.end === null ? '–' : trace.end.peakMegabytes.toFixed(0),
    ]);
  }
  const header = [
    'games',
    'officials',
    'first legal',
    'within 2 %',
    'end',
    'total',
    'open',
    'proven gap',
    'MB',
  ];
  console.log(`\nSeconds and memory by size\n${table(header, rows)}`);
}
