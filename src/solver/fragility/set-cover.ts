export interface SetCover {
  /** Indexes of the chosen sets, ascending; together they cover every row that some set covers. */
  readonly chosen: readonly number[];
  /** No cover has fewer sets than this. */
  readonly atLeast: number;
}

/** Beyond so many branches the best cover so far is given, with the bound that is proven. */
const NODES_MAX = 200_000;

/**
 * The fewest sets that cover all rows, by branch and bound: branch on the row with the fewest sets, bounded below
 * by rows of which no two share a set, starting from the greedy cover. `sets` list rows 0 … rowCount − 1; rows
 * in no set are left aside.
 */
export function smallestCover(rowCount: number, sets: readonly (readonly number[])[]): SetCover {
  const setsOf: number[][] = Array.from({ length: rowCount }, () => []);
  sets.forEach((rows, set) => rows.forEach((row) => setsOf[row]!.push(set)));
  const rows = [...setsOf.keys()].filter((row) => setsOf[row]!.length > 0);
  let best = greedyCover(rows, sets);
  const rootBound = disjointRows(rows, setsOf);
  let nodes = 0;
  const branch = (chosen: readonly number[], open: readonly number[]): void => {
    if (open.length === 0) {
      if (chosen.length < best.length) best = chosen;
      return;
    }
    if (++nodes > NODES_MAX || chosen.length + disjointRows(open, setsOf) >= best.length) return;
    const row = open.reduce((least, other) =>
      setsOf[other]!.length < setsOf[least]!.length ? other : least,
    );
    const useful = setsOf[row]!.map((set) => {
      const covered = new Set(sets[set]);
      return { set, left: open.filter((other) => !covered.has(other)) };
    });
    useful.sort((a, b) => a.left.length - b.left.length || a.set - b.set);
    for (const { set, left } of useful) branch([...chosen, set], left);
  };
  if (rootBound < best.length) branch([], rows);
  return {
    chosen: [...best].sort((a, b) => a - b),
    atLeast: nodes > NODES_MAX ? rootBound : best.length,
  };
}

function greedyCover(rows: readonly number[], sets: readonly (readonly number[])[]): readonly number[] {
  const open = new Set(rows);
  const chosen: number[] = [];
  while (open.size > 0) {
    let best = -1;
    let bestGain = 0;
    sets.forEach((own, set) => {
      const gain = own.reduce((sum, row) => sum + (open.has(row) ? 1 : 0), 0);
      if (gain <= bestGain) return;
      best = set;
      bestGain = gain;
    });
    chosen.push(best);
    for (const row of sets[best]!) open.delete(row);
  }
  return chosen;
}

/** How many rows can be picked so that no set covers two of them: each needs a set of its own. */
function disjointRows(rows: readonly number[], setsOf: readonly (readonly number[])[]): number {
  const taken = new Set<number>();
  let count = 0;
  for (const row of [...rows].sort((a, b) => setsOf[a]!.length - setsOf[b]!.length || a - b)) {
    if (setsOf[row]!.some((set) => taken.has(set))) continue;
    count++;
    for (const set of setsOf[row]!) taken.add(set);
  }
  return count;
}
