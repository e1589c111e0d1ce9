/**
 * Typed arrays over shared memory: worker threads read the compiled slate in place instead of copying
 * hundreds of megabytes. They are written while compiling and never afterwards.
 */
export const sharedInt32 = (length: number): Int32Array => new Int32Array(new SharedArrayBuffer(length * 4));
export const sharedUint32 = (length: number): Uint32Array =>
  new Uint32Array(new SharedArrayBuffer(length * 4));
export const sharedUint8 = (length: number): Uint8Array => new Uint8Array(new SharedArrayBuffer(length));
export const sharedFloat64 = (length: number): Float64Array =>
  new Float64Array(new SharedArrayBuffer(length * 8));

/** Whole numbers, in the narrowest array that holds them all. */
export type WholeNumbers = Int32Array | Float64Array;

const INT32_MAX = 2 ** 31 - 1;

/** An array for whole numbers of 0 to `largest`. */
export function sharedWholeNumbers(length: number, largest: number): WholeNumbers {
  return largest <= INT32_MAX ? sharedInt32(length) : sharedFloat64(length);
}

/** Rows of different lengths, end to end: row r is `values[start[r]] … values[start[r + 1] − 1]`. */
export interface RaggedRows {
  readonly start: Int32Array;
  readonly values: Int32Array;
}

export function raggedRows(rows: readonly (readonly number[])[]): RaggedRows {
  const start = sharedInt32(rows.length + 1);
  rows.forEach((row, index) => {
    start[index + 1] = start[index]! + row.length;
  });
  const values = sharedInt32(start[rows.length]!);
  rows.forEach((row, index) => values.set(row, start[index]));
  return { start, values };
}

/** Where `value` stands in the ascending row, as an index into `rows.values`; −1 when it is not there. */
export function findInRow(rows: RaggedRows, row: number, value: number): number {
  let low = rows.start[row]!;
  let high = rows.start[row + 1]! - 1;
  while (low <= high) {
    const middle = (low + high) >> 1;
    const found = rows.values[middle]!;
    if (found === value) return middle;
    if (found < value) low = middle + 1;
    else high = middle - 1;
  }
  return -1;
}
