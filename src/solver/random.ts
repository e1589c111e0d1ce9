/**
 * A small seeded generator (sfc32, Chris Doty-Humphrey's "small fast chaotic" generator, from PractRand):
 * the same seed gives the same numbers on every machine. Not for secrets.
 */
export class SeededRandom {
  private a: number;
  private b: number;
  private c: number;
  private counter = 1;

  /** `seed` is any whole number; `stream` tells apart generators that share a seed, such as threads. */
  constructor(seed: number, stream = 0) {
    this.a = seed | 0;
    this.b = Math.floor(seed / 2 ** 32) | 0;
    this.c = stream | 0;
    // The first outputs still show the seed; the authors let a dozen pass.
    for (let i = 0; i < 12; i++) this.bits();
  }

  /** 32 random bits as a whole number of 0 to 2³² − 1. */
  bits(): number {
    const sum = (((this.a + this.b) | 0) + this.counter) | 0;
    this.counter = (this.counter + 1) | 0;
    this.a = this.b ^ (this.b >>> 9);
    this.b = (this.c + (this.c << 3)) | 0;
    this.c = (((this.c << 21) | (this.c >>> 11)) + sum) | 0;
    return sum >>> 0;
  }

  /** A number of 0 (inclusive) to 1 (exclusive). */
  unit(): number {
    return this.bits() / 2 ** 32;
  }

  /** A whole number of 0 to `count` − 1; `count` is at least 1. */
  below(count: number): number {
    return Math.floor((this.bits() / 2 ** 32) * count);
  }
}
