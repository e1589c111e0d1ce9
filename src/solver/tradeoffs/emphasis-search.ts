import { type CompiledSlate } from '../compile/compiled-slate';
import { priceSlate } from '../costs/price-slate';
import { ControlBlock } from '../search/control-block';
import { InlineThread, WorkerThread } from '../search/search-thread';
import { type StintLength } from '../search/stint';
import { type SolveOptions } from '../solve/solve-options';
import { emphasise, type Emphasis } from './emphasis';
import { type Front, type FrontSlate } from './front';

/** Warm enough to leave the slate that a search sets out from, in cost units. */
const COOLING = { hot: 20, cold: 0.4 };
const TICK_MS = 20;

type SearchOptions = Pick<SolveOptions, 'nowSeconds' | 'seed' | 'signal'>;

/** Searches one slate at several weights at the same time, a thread each. */
export class EmphasisSearch {
  constructor(
    private readonly slate: CompiledSlate,
    private readonly options: SearchOptions,
  ) {}

  /** One slate for each emphasis; all of them end together. */
  async run(
    front: Front,
    emphases: readonly Emphasis[],
    length: StintLength,
  ): Promise<readonly FrontSlate[]> {
    const control = new ControlBlock(undefined, emphases.length);
    const tick = () => {
      control.nowSeconds = this.options.nowSeconds();
      if (this.options.signal?.aborted === true) control.cancel();
    };
    tick();
    const timer = setInterval(tick, TICK_MS);
    try {
      return await Promise.all(
        emphases.map((emphasis, thread) =>
          this.search(front, emphasis, length, { control, thread, alone: emphases.length === 1, tick }),
        ),
      );
    } finally {
      clearInterval(timer);
    }
  }

  private async search(
    front: Front,
    emphasis: Emphasis,
    length: StintLength,
    { control, thread, alone, tick }: ThreadPlace,
  ): Promise<FrontSlate> {
    const weighted = emphasise(this.slate, emphasis);
    const setting = { slate: weighted, control, thread, seed: this.options.seed ?? 1 };
    const searcher = alone ? new InlineThread(setting, tick) : new WorkerThread(setting);
    try {
      const holders = cheapestStart(front, weighted);
      const { best } = await searcher.run({ holders, region: null, cooling: COOLING, length });
      return { holders: best, cost: priceSlate(this.slate, best), emphasis };
    } finally {
      await searcher.close();
    }
  }
}

interface ThreadPlace {
  readonly control: ControlBlock;
  readonly thread: number;
  /** Nothing else is searched at the same time, so that the calling thread may do it. */
  readonly alone: boolean;
  readonly tick: () => void;
}

/** Of the slates found so far, the best one at these weights. */
function cheapestStart(front: Front, weighted: CompiledSlate): FrontSlate['holders'] {
  const priced = front.all().map(({ holders }) => ({ holders, total: priceSlate(weighted, holders).total }));
  return priced.reduce((best, slate) => (slate.total < best.total ? slate : best)).holders;
}
