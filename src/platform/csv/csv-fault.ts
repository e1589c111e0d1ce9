/** Something in a file that keeps it from being taken in, or (as a notice) that somebody should look at. */
export interface CsvFault {
  /** The file's name as the person knows it. */
  readonly file: string;
  /** Counted from 1, as a text editor shows it; 1 where the file as a whole is meant. */
  readonly line: number;
  /** The column as the file heads it; null where the line as a whole is meant. */
  readonly column: string | null;
  /** What stands there, cut to 80 characters. */
  readonly value: string;
  readonly message: string;
  /** What to try. */
  readonly remedy: string;
}

const shownCharacters = 80;

/** A fault whose value is fit to be shown: on one line and not too long. */
export function csvFault(fault: Omit<CsvFault, 'column' | 'value'> & Partial<CsvFault>): CsvFault {
  const column = fault.column ?? null;
  return {
    ...fault,
    file: onOneLine(fault.file),
    column: column === null ? null : onOneLine(column),
    value: onOneLine(fault.value ?? ''),
  };
}

function onOneLine(text: string): string {
  const characters = [...text.replace(/[\p{Cc}\u2028\u2029]+/gu, ' ')];
  return characters.length > shownCharacters
    ? `${characters.slice(0, shownCharacters - 1).join('')}…`
    : characters.join('');
}

/** `file:line:column  value  message — remedy`, as the terminal shows it. */
export function describeCsvFault(fault: CsvFault): string {
  const where = [fault.file, fault.line, ...(fault.column === null ? [] : [fault.column])].join(':');
  const value = fault.value === '' ? '' : `"${fault.value}"  `;
  return `${where}  ${value}${fault.message} — ${fault.remedy}`;
}
