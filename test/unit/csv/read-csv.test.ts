// Goal: a file as a spreadsheet exports it is read; anything doubtful is a fault that names its place. Method: byte by byte.
import { describeCsvFault } from '../../../src/platform/csv/csv-fault';
import { firstInvalidByte } from '../../../src/platform/csv/decode-text';
import { fileLinesMax, readCsv } from '../../../src/platform/csv/read-csv';

const columns = [
  { name: 'code', required: true },
  { name: 'full_name', required: true },
  { name: 'note', required: false },
];
const bytes = (text: string) => new TextEncoder().encode(text);
const read = (text: string | Uint8Array) =>
  readCsv('list.csv', typeof text === 'string' ? bytes(text) : text, columns);
const cellsOf = (text: string | Uint8Array) => read(text).rows.map((row) => Object.fromEntries(row.cells));
const linesOf = (text: string) => read(text).rows.map((row) => row.line);
const faultsOf = (text: string | Uint8Array) =>
  read(text).faults.map(({ line, column, value, message }) => ({ line, column, value, message }));

describe('what a spreadsheet writes', () => {
  const expected = [{ code: 'A1', full_name: 'Ana, B.', note: 'x' }];

  test.each([
    ['commas', 'code,full_name,note\nA1,"Ana, B.",x\n'],
    ['semicolons', 'code;full_name;note\nA1;Ana, B.;x\n'],
    ['tabs', 'code\tfull_name\tnote\nA1\tAna, B.\tx\n'],
    ['CRLF', 'code;full_name;note\r\nA1;Ana, B.;x\r\n'],
    ['CR alone', 'code;full_name;note\rA1;Ana, B.;x'],
    ['a byte order mark', '\ufeffcode;full_name;note\nA1;Ana, B.;x\n'],
    ['a header in another order and case', 'NOTE;Full Name;Code\nx;Ana, B.;A1'],
    ['hyphens in the header', 'note;full-name;code\nx;Ana, B.;A1'],
    ['blank lines', '\n\ncode;full_name;note\n\n;;\nA1;Ana, B.;x\n\n'],
    ['blanks around cells', 'code ; full_name; note\n A1 ; Ana, B. ;x '],
    ['surplus separators', 'code;full_name;note;;\nA1;Ana, B.;x;;\n'],
  ])('%s', (_, text) => {
    expect(read(text).faults).toEqual([]);
    expect(cellsOf(text)).toEqual(expected);
  });

  test('a short line has empty cells at its end, and a missing optional column is no cell at all', () => {
    expect(cellsOf('code,full_name,note\nA1,Ana')).toEqual([{ code: 'A1', full_name: 'Ana', note: '' }]);
    expect(cellsOf('code,full_name\nA1,Ana')).toEqual([{ code: 'A1', full_name: 'Ana' }]);
  });

  test('what looks like a formula is text', () => {
    expect(cellsOf('code,full_name\n=1+1,"=HYPERLINK(""x"")"')[0]).toEqual({
      code: '=1+1',
      full_name: '=HYPERLINK("x")',
    });
  });

  test('lines are counted as an editor shows them, whatever stands inside quotes', () => {
    expect(linesOf('code,full_name\n\nA1,"two\nlines"\nA2,Bo\n;\nA3,Cy')).toEqual([3, 5, 6, 7]);
    expect(linesOf('code,full_name\r\nA1,"two\r\nlines"\r\nA2,Bo')).toEqual([2, 4]);
  });
});

describe('faults', () => {
  test('another encoding is refused with its place', () => {
    const latin1 = Uint8Array.from([...bytes('code,full_name\nA1,S'), 0xf8, ...bytes('ren\n')]);
    expect(faultsOf(latin1)).toEqual([
      { line: 2, column: null, value: '', message: 'Byte 19 (hexadecimal f8) is not UTF-8.' },
    ]);
    expect(faultsOf(Uint8Array.from([0xff, 0xfe, 0x63, 0]))[0]?.message).toContain('UTF-16');
    expect(faultsOf('code,full_name\n\nA1,\0')[0]).toMatchObject({ line: 3 });
  });

  test('all faults of a header at once', () => {
    const faults = faultsOf('code,colour,Code,\n');
    expect(faults.map(({ message }) => message)).toEqual([
      'Nobody knows this column.',
      'The column is there twice.',
      'The column full_name is missing.',
    ]);
  });

  test('several bad lines are all told, and the good ones still read', () => {
    const text = 'code,full_name\nA1,x"y\nA2,Bo\nA3,Cy,surplus\nA4,Di\nA5,q"r\n';
    expect(faultsOf(text).map(({ line }) => line)).toEqual([2, 4, 6]);
    expect(cellsOf(text).map(({ code }) => code)).toEqual(['A2', 'A4']);
  });

  test('a quote that is never closed', () => {
    expect(faultsOf('code,full_name\nA1,"Ana\nA2,Bo\n')[0]?.message).toBe(
      'A quote is opened and never closed.',
    );
  });

  test('an empty file, one too long and one too large', () => {
    expect(faultsOf('')[0]?.message).toBe('The file is empty.');
    expect(faultsOf('\n \n')[0]?.message).toBe('The file is empty.');
    const long = `code,full_name\n${'A,B\n'.repeat(fileLinesMax)}`;
    expect(faultsOf(long)[0]?.message).toContain('100001 lines');
    expect(faultsOf(new Uint8Array(10 * 1024 * 1024 + 1).fill(0x61))[0]?.message).toContain('10.0 MB');
  });

  test('a fault is one line for a terminal', () => {
    const [fault] = read('code,full_name,"a\nb"\n').faults;
    expect(fault && describeCsvFault(fault)).toBe(
      'list.csv:1:a b  "a b"  Nobody knows this column. — remove or rename it; known are code, full_name, note',
    );
  });
});

test('well-formed UTF-8 is what the decoder of the platform takes for it', () => {
  const samples = [
    [0xc0, 0x80],
    [0xe0, 0x9f, 0xbf],
    [0xed, 0xa0, 0x80],
    [0xf4, 0x90, 0x80, 0x80],
    [0xf0, 0x8f, 0xbf, 0xbf],
    [0xe2, 0x82],
    [0x80],
    [0xe2, 0x82, 0xac],
    [0xf0, 0x9f, 0x8f, 0x80],
    [0xc3, 0xa6],
  ];
  const strict = new TextDecoder('utf-8', { fatal: true });
  for (const sample of samples) {
    const accepted = (() => {
      try {
        strict.decode(Uint8Array.from(sample));
        return true;
      } catch {
        return false;
      }
    })();
    expect({ sample, accepted: firstInvalidByte(Uint8Array.from(sample)) === null }).toEqual({
      sample,
      accepted,
    });
  }
});
