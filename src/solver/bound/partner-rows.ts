import { type CompiledSlate } from '../compile';
import { type Stops } from './stops';

/**
 * For two officials who should not work together and a game that both may work: at most one of them works
 * it, or the price of the pair is paid (no price is high enough where one avoids the other). Row r joins the
 * stops `stopA[r]` and `stopB[r]`; its multiplier lies between 0 and `most[r]`.
 */
export interface PartnerRows {
  readonly count: number;
  readonly stopA: Int32Array;
  readonly stopB: Int32Array;
  /** The price of the pair; `Infinity` where one avoids the other. */
  readonly most: Float64Array;
}

export function listPartnerRows(slate: CompiledSlate, stops: Stops): PartnerRows {
  const stopA: number[] = [];
  const stopB: number[] = [];
  const most: number[] = [];
  const join = (a: number, b: number, price: number): void => {
    let i = stops.start[a]!;
    let j = stops.start[b]!;
    while (i < stops.start[a + 1]! && j < stops.start[b + 1]!) {
      const difference = stops.game[i]! - stops.game[j]!;
      if (difference === 0) {
        stopA.push(i);
        stopB.push(j);
        most.push(price);
      }
      if (difference <= 0) i++;
      if (difference >= 0) j++;
    }
  };
  const { recentPartners, recentPartnerCounts, avoidOfficials, weights } = slate;
  for (let official = 0; official < slate.officialCount; official++) {
    const avoided = new Set<number>();
    for (let row = avoidOfficials.start[official]!; row < avoidOfficials.start[official + 1]!; row++) {
      const other = avoidOfficials.values[row]!;
      avoided.add(other);
      if (other > official) join(official, other, Infinity);
    }
    for (let row = recentPartners.start[official]!; row < recentPartners.start[official + 1]!; row++) {
      const other = recentPartners.values[row]!;
      const price = weights.partnerRepeat * recentPartnerCounts[row]!;
      if (other > official && price > 0 && !avoided.has(other)) join(official, other, price);
    }
  }
  return {
    count: stopA.length,
    stopA: Int32Array.from(stopA),
    stopB: Int32Array.from(stopB),
    most: Float64Array.from(most),
  };
}
