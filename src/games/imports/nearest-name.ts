/** The name that differs least from a mistyped one, by at most a third of its letters; null when none is near. */
export function nearestName(mistyped: string, names: Iterable<string>): string | null {
  const wanted = plain(mistyped);
  const limit = Math.max(1, Math.floor(mistyped.length / 3));
  let nearest: string | null = null;
  let least = limit + 1;
  for (const name of names) {
    const candidate = plain(name);
    if (Math.abs(candidate.length - wanted.length) >= least) continue;
    const distance = editDistance(wanted, candidate);
    if (distance < least) {
      least = distance;
      nearest = name;
    }
  }
  return nearest;
}

/** Without case, accents, blanks and leading zeros, which people get wrong most. */
function plain(name: string): string {
  return name
    .normalize('NFD')
    .replace(/\p{M}|[\s._-]/gu, '')
    .toLowerCase()
    .replace(/^0+(?=.)/, '');
}

/** Letters to insert, delete, replace, or exchange with their neighbour (Damerau; optimal string alignment). */
function editDistance(left: string, right: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: right.length + 1 }, (_, index) => index);
  for (let row = 1; row <= left.length; row += 1) {
    const current = [row];
    for (let column = 1; column <= right.length; column += 1) {
      const isSame = left[row - 1] === right[column - 1];
      const isExchange = left[row - 1] === right[column - 2] && left[row - 2] === right[column - 1];
      current.push(
        Math.min(
          (last[column - 1] ?? 0) + (isSame ? 0 : 1),
          (last[column] ?? 0) + 1,
          (current[column - 1] ?? 0) + 1,
          row > 1 && column > 1 && isExchange ? (beforeLast[column - 2] ?? 0) + 1 : Infinity,
        ),
      );
    }
    beforeLast = last;
    last = current;
  }
  return last[right.length] ?? 0;
}
