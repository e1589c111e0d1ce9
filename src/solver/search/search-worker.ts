import { parentPort, workerData } from 'node:worker_threads';
import { ControlBlock } from './control-block';
import { type WorkerSetting } from './search-thread';
import { StintRunner, type Stint } from './stint';

/** Entry of a search thread: runs the stints that the coordinator posts and posts back their results. */
const { slate, controlMemory, thread, seed } = workerData as WorkerSetting;
const runner = new StintRunner(slate, new ControlBlock(controlMemory), thread, seed);

parentPort?.on('message', (stint: Stint) => {
  const run = runner.run(stint);
  for (;;) {
    const step = run.next();
    if (step.done !== true) continue;
    parentPort?.postMessage(step.value);
    return;
  }
});
