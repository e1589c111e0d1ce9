/** One fault of an input file: where, what stands there, what is wrong and what to do about it. */
export interface Fault {
  /** JSON path, such as `games[3].tipOff`; empty for the document itself. */
  readonly path: string;
  /** The offending value, shortened to fit a line. */
  readonly value: string;
  /** What is wrong, as the rest of a sentence: `must be a whole number of at least 0`. */
  readonly problem: string;
  /** What to do about it. */
  readonly remedy: string;
}

/** One line for a person: `games[3].tipOff: must be … (is "x"). Remedy.` */
export function describeFault(fault: Fault): string {
  return `${fault.path === '' ? 'the document' : fault.path}: ${fault.problem} (is ${fault.value}). ${fault.remedy}`;
}

const SHOWN_CHARACTERS_MAX = 60;

/** A value as it would stand in the file, cut to one short line; never runs code of the value. */
export function showValue(value: unknown): string {
  if (value === undefined) return 'missing';
  if (Array.isArray(value)) return `an array of ${value.length}`;
  if (typeof value === 'object' && value !== null) return 'an object';
  const text = JSON.stringify(value) ?? typeof value;
  return text.length <= SHOWN_CHARACTERS_MAX ? text : `${text.slice(0, SHOWN_CHARACTERS_MAX)}…`;
}

/** Collects every fault of a file, in the order in which they are met. */
export class FaultList {
  readonly faults: Fault[] = [];

  add(path: string, value: unknown, problem: string, remedy: string): void {
    this.faults.push({ path, value: showValue(value), problem, remedy });
  }
}

/** The JSON path of a member: dotted for plain names, quoted for anything else. */
export function memberPath(parent: string, key: string): string {
  if (!/^[A-Za-z_$][\w$]*$/.test(key)) return `${parent}[${JSON.stringify(key)}]`;
  return parent === '' ? key : `${parent}.${key}`;
}
