// Goal: no text can break out of its cell. Method: write hostile text as CSV, read it back, with every separator's characters,
// quotes, line ends, formula signs and control characters in play.
import fc from 'fast-check';
import { readCsv } from '../../../src/platform/csv/read-csv';
import { writeCsv } from '../../../src/platform/csv/write-csv';

const hostile = fc
  .array(
    fc.oneof(
      fc.constantFrom(
        '"',
        '""',
        ',',
        ';',
        '\t',
        '\n',
        '\r\n',
        '\r',
        ' ',
        '=',
        '@',
        "'",
        '\ufeff',
        '\u2028',
        '\\',
      ),
      fc.string({ unit: 'grapheme', maxLength: 4 }),
    ),
    { maxLength: 8 },
  )
  .map((pieces) => pieces.join('').replaceAll('\0', ''))
  // A lone surrogate is no text and cannot be written as UTF-8.
  .filter((text) => !/\p{Surrogate}/u.test(text));

const names = ['first', 'second', 'third'];
const columns = names.map((name) => ({ name, required: true }));
const asRead = (cell: string) => cell.replace(/\r\n?/g, '\n').trim();

test('what is written is read again, cell by cell', () => {
  let read = 0;
  fc.assert(
    fc.property(fc.array(fc.tuple(hostile, hostile, hostile), { maxLength: 12 }), (rows) => {
      const content = readCsv('x.csv', new TextEncoder().encode(writeCsv(names, rows)), columns);
      const expected = rows.map((row) => row.map(asRead)).filter((row) => row.some((cell) => cell !== ''));
      expect(content.faults).toEqual([]);
      expect(content.rows.map((row) => names.map((name) => row.cells.get(name)))).toEqual(expected);
      read += expected.length;
    }),
    { numRuns: 500 },
  );
  expect(read).toBeGreaterThan(500);
});

test('no bytes make the reader throw', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 200 }), (noise) => {
      const content = readCsv('x.csv', noise, columns);
      expect(content.rows.length === 0 || content.readable).toBe(true);
    }),
    { numRuns: 500 },
  );
  fc.assert(
    fc.property(fc.array(hostile, { maxLength: 20 }), (pieces) => {
      const text = `first,second,third\n${pieces.join('\n')}`;
      const content = readCsv('x.csv', new TextEncoder().encode(text), columns);
      for (const fault of content.faults) expect(fault.line).toBeGreaterThanOrEqual(1);
    }),
    { numRuns: 500 },
  );
});
