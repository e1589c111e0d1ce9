import { mayFollow, type CompiledSlate } from '../compile';

/**
 * For one day: which games one official could work both of, whatever they do in between. With measured legs that
 * break the triangle inequality a third game can bridge two that may not follow each other directly.
 */
export class DayOrder {
  private readonly first: number;
  private readonly words: number;
  private readonly bits: Uint32Array;

  constructor(slate: CompiledSlate, day: number) {
    this.first = slate.dayStart[day]!;
    const last = slate.dayStart[day + 1]!;
    const games = last - this.first;
    this.words = Math.ceil(games / 32);
    this.bits = new Uint32Array(games * this.words);
    // Later games first, so that all that can follow a game's followers is known already.
    for (let earlier = last - 1; earlier >= this.first; earlier--) {
      const row = (earlier - this.first) * this.words;
      for (let later = earlier + 1; later < last; later++) {
        if (!mayFollow(slate, earlier, later)) continue;
        const column = later - this.first;
        this.bits[row + (column >> 5)]! |= 1 << (column & 31);
        for (let word = 0; word < this.words; word++)
          this.bits[row + word]! |= this.bits[column * this.words + word]!;
      }
    }
  }

  /** Both games are of this day. */
  canWorkBoth(one: number, other: number): boolean {
    const [earlier, later] = one < other ? [one, other] : [other, one];
    const column = later - this.first;
    const word = this.bits[(earlier - this.first) * this.words + (column >> 5)]!;
    return ((word >>> (column & 31)) & 1) === 1;
  }

  /** The most of the ascending games that one official can work. */
  longestTour(games: readonly number[]): number {
    const longestTo: number[] = [];
    games.forEach((game, i) => {
      let longest = 0;
      for (let j = 0; j < i; j++)
        if (longestTo[j]! > longest && this.canWorkBoth(games[j]!, game)) longest = longestTo[j]!;
      longestTo.push(longest + 1);
    });
    return Math.max(0, ...longestTo);
  }
}
