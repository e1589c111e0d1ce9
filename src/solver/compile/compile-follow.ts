import { type CompiledSlate } from './compiled-slate';
import { spareMsBetween } from '../rules/h3-between-games';
import { sharedInt32, sharedUint32 } from './arrays';
import { type SlateFacts } from './facts';

type Follow = Pick<CompiledSlate, 'follow' | 'followStart' | 'followWords'>;

/** H3 between every two games of a day, as bits. */
export function compileFollow(facts: SlateFacts): Follow {
  const followStart = sharedInt32(facts.dayCount + 1);
  const followWords = sharedInt32(facts.dayCount);
  for (let day = 0; day < facts.dayCount; day++) {
    const games = facts.dayStart[day + 1]! - facts.dayStart[day]!;
    followWords[day] = Math.ceil(games / 32);
    followStart[day + 1] = followStart[day]! + games * followWords[day]!;
  }
  const follow = sharedUint32(followStart[facts.dayCount]!);
  for (let day = 0; day < facts.dayCount; day++) {
    const first = facts.dayStart[day]!;
    for (let earlier = first; earlier < facts.dayStart[day + 1]!; earlier++) {
      const row = followStart[day]! + (earlier - first) * followWords[day]!;
      for (let later = earlier + 1; later < facts.dayStart[day + 1]!; later++) {
        if (spareMsBetween(facts, earlier, later) < 0) continue;
        const word = row + ((later - first) >> 5);
        follow[word] = follow[word]! | (1 << ((later - first) & 31));
      }
    }
  }
  return { follow, followStart, followWords };
}

/** Whether game `later` may directly follow game `earlier` of the same day in a tour (H3). */
export function mayFollow(slate: CompiledSlate, earlier: number, later: number): boolean {
  const day = slate.gameDay[earlier]!;
  const first = slate.dayStart[day]!;
  const column = later - first;
  const word = slate.followStart[day]! + (earlier - first) * slate.followWords[day]! + (column >> 5);
  return ((slate.follow[word]! >>> (column & 31)) & 1) === 1;
}
