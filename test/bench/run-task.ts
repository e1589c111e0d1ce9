import { fork } from 'node:child_process';
import { join } from 'node:path';
import { type Task } from './run-one';
import { type RunEnd, type RunNews, type Trace, type TracePoint } from './trace';

/** A run that does not end by itself is ended this long after its time. */
const GRACE_SECONDS = 20;

/** Runs a task in a process of its own and gathers what it tells. */
export function runTask(task: Task): Promise<Trace> {
  return new Promise((resolve, reject) => {
    const points: TracePoint[] = [];
    let end: RunEnd | null = null;
    const child = fork(join(__dirname, 'run-one.js'), [JSON.stringify(task)], {
      execArgv: ['--max-old-space-size=4096'],
    });
    const timer = setTimeout(() => child.kill(), 1000 * (task.seconds + GRACE_SECONDS));
    child.on('message', (news: RunNews) => {
      if ('point' in news) points.push(news.point);
      else end = news.end;
    });
    child.on('error', reject);
    child.on('exit', () => {
      clearTimeout(timer);
      resolve({ points, end });
    });
  });
}
