import { parentPort, receiveMessageOnPort, workerData } from 'node:worker_threads';
import startHighs, { type Highs } from 'highs';
import { ControlBlock } from '../search/control-block';
import { Prover } from './prover';
import { type BetterSlate, type ProverNews, type ProverSetting } from './prover-messages';

/** Entry of a proof thread. It looks for messages itself, because a proof keeps the thread busy for long. */
const { slate, controlMemory, searchThreads, length, holders, cost } = workerData as ProverSetting;
const control = new ControlBlock(controlMemory);
const port = parentPort!;
const tell = (news: ProverNews): void => port.postMessage(news);

// Compiling the linear solver takes a moment; many runs end without needing it.
let highs: Promise<Highs> | undefined;

const prover = new Prover(
  {
    slate,
    loadHighs: () => (highs ??= startHighs()),
    tell,
    fetchBetter: () => {
      let best: BetterSlate | null = null;
      for (let next = receiveMessageOnPort(port); next !== undefined; next = receiveMessageOnPort(port)) {
        const better = next.message as BetterSlate;
        if (best === null || better.cost < best.cost) best = better;
      }
      return best;
    },
    knownCost: () => {
      // Without a clock the figures of other threads must not enter, for they are never the same twice.
      if ('priceSteps' in length) return Infinity;
      let least = Infinity;
      for (let thread = 0; thread < searchThreads; thread++)
        least = Math.min(least, control.bestCost(thread));
      return least;
    },
    isOver: () => control.isCancelled || ('endSeconds' in length && control.nowSeconds >= length.endSeconds),
  },
  { holders, cost },
);

async function main(): Promise<void> {
  if ('priceSteps' in length) {
    prover.raise(length.priceSteps);
    tell({ kind: 'end', proven: false });
    return;
  }
  tell({ kind: 'end', proven: await prover.run() });
}

void main();
