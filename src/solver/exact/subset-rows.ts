import { type CompiledSlate } from '../compile';
import { usesOf, type WeekendPool } from './weekend-pool';

/** Three things (seats or officials) of which the weekends chosen may together use two of the three once. */
export type SubsetRow = readonly [number, number, number];

const VIOLATION_MIN = 0.02;

/**
 * Subset-row cuts (Jepsen, Petersen, Spoorendonk, Pisinger: Subset-row inequalities applied to the
 * vehicle-routing problem with time windows, Operations Research 56, 2008) for three things: of the weekends
 * that use at least two of the three, one at most is chosen. Returns those that the fractional solution
 * `share` breaks, most broken first, at most `most`.
 */
export function brokenSubsetRows(
  slate: CompiledSlate,
  pool: WeekendPool,
  share: Float64Array,
  most: number,
): readonly SubsetRow[] {
  const thingCount = 2 * slate.gameCount + slate.officialCount;
  const users: { readonly uses: readonly number[]; readonly share: number }[] = [];
  for (let w = 0; w < pool.official.length; w++) {
    if (share[w]! > 1e-6 && share[w]! < 1 - 1e-6)
      users.push({ uses: usesOf(slate, pool, w), share: share[w]! });
  }
  const together = new Float64Array(thingCount * thingCount);
  const usersOf: number[][] = Array.from({ length: thingCount }, () => []);
  users.forEach(({ uses, share: part }, user) => {
    for (const a of uses) {
      usersOf[a]!.push(user);
      for (const b of uses) if (a !== b) together[a * thingCount + b]! += part;
    }
  });
  const used = usersOf.flatMap((list, thing) => (list.length > 0 ? [thing] : []));
  const found: { readonly row: SubsetRow; readonly violation: number }[] = [];
  for (let i = 0; i < used.length; i++) {
    const a = used[i]!;
    for (let j = i + 1; j < used.length; j++) {
      const b = used[j]!;
      const ab = together[a * thingCount + b]!;
      for (let k = j + 1; k < used.length; k++) {
        const c = used[k]!;
        const sum = ab + together[a * thingCount + c]! + together[b * thingCount + c]!;
        if (sum <= 1 + VIOLATION_MIN) continue;
        const violation = sum - 2 * shareOfAll(users, usersOf[a]!, b, c) - 1;
        if (violation > VIOLATION_MIN) found.push({ row: [a, b, c], violation });
      }
    }
  }
  found.sort((x, y) => y.violation - x.violation);
  return spread(
    found.map(({ row }) => row),
    most,
  );
}

/** Users of all three were counted three times among the pairs and count once. */
function shareOfAll(
  users: readonly { readonly uses: readonly number[]; readonly share: number }[],
  usersOfA: readonly number[],
  b: number,
  c: number,
): number {
  let share = 0;
  for (const user of usersOfA) {
    const { uses } = users[user]!;
    if (uses.includes(b) && uses.includes(c)) share += users[user]!.share;
  }
  return share;
}

/** Takes rows in order, but none whose things have been used often: cuts far apart help each other. */
function spread(rows: readonly SubsetRow[], most: number): readonly SubsetRow[] {
  const timesUsed = new Map<number, number>();
  const taken: SubsetRow[] = [];
  for (const row of rows) {
    if (taken.length >= most) break;
    if (row.some((thing) => (timesUsed.get(thing) ?? 0) >= 8)) continue;
    for (const thing of row) timesUsed.set(thing, (timesUsed.get(thing) ?? 0) + 1);
    taken.push(row);
  }
  return taken;
}
