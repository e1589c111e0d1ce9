/**
 * The cheapest way to give each of n rows a column of its own, by shortest augmenting paths (Jonker and
 * Volgenant, A shortest augmenting path algorithm for dense and sparse linear assignment problems,
 * Computing 38, 1987). `cost` holds n rows of n finite figures; the column of row r is left in `columnOfRow[r]`.
 * Takes time of the order of n³.
 */
export function solveAssignment(n: number, cost: Float64Array, columnOfRow: Int32Array): void {
  const rowPrice = new Float64Array(n + 1);
  const columnPrice = new Float64Array(n + 1);
  // Column 0 stands for the row that is being placed; rows and columns count from 1 in here.
  const rowOfColumn = new Int32Array(n + 1);
  const cameFrom = new Int32Array(n + 1);
  const distance = new Float64Array(n + 1);
  const isDone = new Uint8Array(n + 1);
  for (let row = 1; row <= n; row++) {
    rowOfColumn[0] = row;
    distance.fill(Infinity);
    isDone.fill(0);
    let column = 0;
    do {
      isDone[column] = 1;
      column = extendPath(column);
    } while (rowOfColumn[column] !== 0);
    while (column !== 0) {
      const before = cameFrom[column]!;
      rowOfColumn[column] = rowOfColumn[before]!;
      column = before;
    }
  }
  for (let column = 1; column <= n; column++) columnOfRow[rowOfColumn[column]! - 1] = column - 1;

  /** Looks on from the row of a finished column and returns the nearest column that is not finished. */
  function extendPath(column: number): number {
    const row = rowOfColumn[column]!;
    let nearest = 0;
    let nearestDistance = Infinity;
    for (let next = 1; next <= n; next++) {
      if (isDone[next] === 1) continue;
      const reduced = cost[(row - 1) * n + next - 1]! - rowPrice[row]! - columnPrice[next]!;
      if (reduced < distance[next]!) {
        distance[next] = reduced;
        cameFrom[next] = column;
      }
      if (distance[next]! < nearestDistance) {
        nearestDistance = distance[next]!;
        nearest = next;
      }
    }
    for (let done = 0; done <= n; done++) {
      if (isDone[done] === 1) {
        rowPrice[rowOfColumn[done]!]! += nearestDistance;
        columnPrice[done]! -= nearestDistance;
      } else {
        distance[done]! -= nearestDistance;
      }
    }
    return nearest;
  }
}
