import { type CompiledSlate } from '../compile/compiled-slate';
import { MINUTE_MS } from '../compile/facts';
import { backHomeMs, leavesHomeMs } from '../rules/h10-rest';

/** For each day, the other days whose games could come too close to it for anybody (H10). */
export interface RestReach {
  /** Days firstDay[d] … lastDay[d], apart from d itself, have to be looked at. */
  readonly firstDay: Int32Array;
  readonly lastDay: Int32Array;
}

export function restReach(slate: CompiledSlate): RestReach {
  const days = slate.dayCount;
  const leaves = new Float64Array(days).fill(Infinity);
  const back = new Float64Array(days).fill(-Infinity);
  const { start, values } = slate.gamesOfOfficial;
  for (let official = 0; official < slate.officialCount; official++) {
    for (let i = start[official]!; i < start[official + 1]!; i++) {
      const game = values[i]!;
      const day = slate.gameDay[game]!;
      leaves[day] = Math.min(leaves[day]!, leavesHomeMs(slate, official, game));
      back[day] = Math.max(back[day]!, backHomeMs(slate, official, game));
    }
  }
  const firstDay = Int32Array.from({ length: days }, (_, day) => day);
  const lastDay = firstDay.slice();
  for (let day = 0; day < days; day++) {
    for (let later = day + 1; later < days; later++) {
      if (leaves[later]! - back[day]! >= slate.minRestMinutes * MINUTE_MS) continue;
      lastDay[day] = later;
      firstDay[later] = Math.min(firstDay[later]!, day);
    }
  }
  return { firstDay, lastDay };
}
