import { availableParallelism } from 'node:os';
import { Command, InvalidArgumentError, Option } from 'commander';
import { benchGrowth } from './growth.bench';
import { generatedInstances, instancesIn, isSize, type Size } from './instances';
import { machineLine } from './machine';
import { benchSolve } from './solve.bench';

interface Options {
  readonly instances?: string;
  readonly seconds: number;
  readonly seed: number;
  readonly threads: number;
  readonly sizes: readonly Size[];
  readonly games: readonly number[];
  readonly svg?: string;
}

function positive(text: string): number {
  const value = Number(text);
  if (!(value > 0)) throw new InvalidArgumentError('a number above 0');
  return value;
}

function sizes(text: string): Size[] {
  return text.split(',').map((size) => {
    if (!isSize(size)) throw new InvalidArgumentError('of S, M and L');
    return size;
  });
}

function numbers(text: string): number[] {
  return text.split(',').map(positive);
}

const seconds = () => new Option('--seconds <n>', 'time for each run').argParser(positive).default(10);
const seed = () => new Option('--seed <n>', 'of instances and search').argParser(Number).default(1);
const threads = () => new Option('--threads <n>').argParser(positive).default(availableParallelism());

function announce(words: string, options: Options): void {
  console.log(
    `${machineLine()}\n${words}, ${options.seconds} s each with start-up, seed ${options.seed}, ${options.threads} threads`,
  );
}

new Command('bench')
  .description('measure the solver; every slate is judged by the independent checker')
  .addCommand(
    new Command('solve')
      .description('quality over time, beside HiGHS on a plain exact model of the small slates')
      .option('--instances <folder>', 'slate-problem files instead of generated slates')
      .option('--sizes <list>', 'of the generated slates: S, M, L', sizes, ['S', 'M', 'L'])
      .option('--svg <file>', 'write a plot of gap over time')
      .addOption(seconds())
      .addOption(seed())
      .addOption(threads())
      .action(async (options: Options) => {
        const { instances: folder } = options;
        const instances =
          folder === undefined ? generatedInstances(options.sizes, options.seed) : instancesIn(folder);
        announce(`${instances.length} instances from ${folder ?? 'the generator'}`, options);
        await benchSolve({ ...options, instances, svgFile: options.svg ?? null });
      }),
    { isDefault: true },
  )
  .addCommand(
    new Command('growth')
      .description('time and memory from 30 to 10,000 games')
      .option('--games <list>', 'numbers of games', numbers, [30, 100, 300, 1000, 3000, 10_000])
      .addOption(seconds())
      .addOption(seed())
      .addOption(threads())
      .action(async (options: Options) => {
        announce('Growth', options);
        await benchGrowth({ ...options, sizes: options.games });
      }),
  )
  .parseAsync()
  .catch((error: unknown) => {
    console.error(error);
    process.exitCode = 1;
  });
