import { z } from 'zod';
import type { Cell, CellContext, CellResult } from './import-kind';
import type { FieldValue } from './import-record';

/** Ways of reading a cell. Texts are trimmed already and never empty here. */

/** Text on one line. */
export function line(max: number): Cell<string> {
  const schema = z
    .string()
    .max(max, { error: `It has more than ${max} characters.` })
    .regex(/^\P{Cc}*$/u, { error: 'It holds a line break or another control character.' });
  return checked(`text of at most ${max} characters`, schema, 'write it shorter, on one line');
}

/** Text that may have several lines. */
export function paragraphs(max: number): Cell<string> {
  const schema = z
    .string()
    .max(max, { error: `It has more than ${max} characters.` })
    .regex(/^(\P{Cc}|\n|\t)*$/u, { error: 'It holds a control character.' });
  return checked(`text of at most ${max} characters, line breaks allowed`, schema, 'write it again by hand');
}

/** A short name by which other files refer to the object. */
export function code(): Cell<string> {
  const schema = z
    .string()
    .max(40, { error: 'It has more than 40 characters.' })
    .regex(/^[^\p{Cc}|]*$/u, { error: 'It holds a line break, a control character or "|".' });
  return checked('text of at most 40 characters without "|"', schema, 'choose a short plain name');
}

export function email(): Cell<string | null> {
  const schema = z.email({ error: 'It is no e-mail address.' }).max(254, { error: 'It is too long.' });
  return mapped(
    checked('an e-mail address', schema, 'write it like ana@example.org, or leave it empty'),
    (text) => text.toLowerCase(),
  );
}

export function yesNo(): Cell<boolean> {
  return oneOf(
    { yes: true, no: false, y: true, n: false, true: true, false: false, '1': true, '0': false },
    'yes or no',
  );
}

/** One of some words, in any case; `form` says which are meant to be used. */
export function oneOf<T extends FieldValue>(meaning: Readonly<Record<string, T>>, form: string): Cell<T> {
  const byWord = new Map(Object.entries(meaning).map(([word, value]) => [word.toLowerCase(), value]));
  return {
    form,
    read: (text) => {
      const value = byWord.get(text.toLowerCase());
      return value === undefined
        ? { message: 'It is none of the words that are known here.', remedy: `write ${form}` }
        : { value };
    },
  };
}

export function wholeNumber(min: number, max: number): Cell<number> {
  const form = `a whole number from ${min} to ${max}`;
  return {
    form,
    read: (text) => {
      const value = /^[+-]?\d{1,15}$/.test(text) ? Number(text) : Number.NaN;
      const parsed = z.number().int().min(min).max(max).safeParse(value);
      return parsed.success
        ? { value: parsed.data }
        : { message: `It is not ${form}.`, remedy: `write ${form}` };
    },
  };
}

/** A number with a decimal point, or a decimal comma where the file's columns are not separated by commas. */
export function decimal(min: number, max: number): Cell<number> {
  const form = `a number from ${min} to ${max}`;
  const schema = z.number().min(min).max(max);
  return {
    form,
    read: (text, { separator }) => {
      const withPoint = separator === ',' ? text : text.replace(/^([+-]?\d+),(\d+)$/, '$1.$2');
      const value = /^[+-]?\d{1,15}(\.\d{1,15})?$/.test(withPoint) ? Number(withPoint) : Number.NaN;
      const parsed = schema.safeParse(value);
      if (parsed.success) return { value: parsed.data };
      const remedy = text.includes(',') && separator === ',' ? 'write a decimal point' : `write ${form}`;
      return { message: `It is not ${form}.`, remedy };
    },
  };
}

/** An amount in the association's currency, kept in its minor units. */
export function amount(): Cell<number> {
  const number = decimal(0, 1_000_000);
  return {
    form: "an amount in the association's currency, such as 35.50",
    read: (text, context) => {
      const read = number.read(text, context);
      if (!('value' in read)) return read;
      const digits = minorDigits(context.association.currency);
      const minorUnits = Math.round(read.value * 10 ** digits);
      if (Math.abs(minorUnits / 10 ** digits - read.value) < 1e-9) return { value: minorUnits };
      const message = `${context.association.currency} has ${digits} decimals.`;
      return { message, remedy: `round it to ${digits} decimals` };
    },
  };
}

/** How many decimals a currency has. */
export function minorDigits(currency: string): number {
  return (
    new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2
  );
}

/** The code or number of an object of another kind. */
export function nameOf(kind: string, noun: string): Cell<string> {
  return {
    form: `a ${noun} that exists or comes in the same import`,
    read: (text, { state }) =>
      state.mayHave(kind, text) ? { value: text } : unknownName(state, { kind, noun, text }),
  };
}

/** The answer to a name that nobody has, with the nearest that somebody has. */
export function unknownName(
  state: CellContext['state'],
  asked: { readonly kind: string; readonly noun: string; readonly text: string },
): { message: string; remedy: string } {
  const near = state.suggestion(asked.kind, asked.text);
  return {
    message: `There is no ${asked.noun} "${asked.text}".`,
    remedy: near === null ? `add it to the list of ${asked.kind} first` : `did you mean "${near}"?`,
  };
}

/** Several values with "|" between them. */
export function listOf(cell: Cell<string>): Cell<readonly string[]> {
  return items(cell);
}

export function numbersOf(cell: Cell<number>): Cell<readonly number[]> {
  return items(cell);
}

function items<T extends string | number>(cell: Cell<T>): Cell<readonly T[]> {
  return {
    form: `one or more with "|" between them: ${cell.form}`,
    read: (text, context) => {
      const values: T[] = [];
      for (const item of text.split('|').map((part) => part.trim())) {
        if (item === '') continue;
        const read = cell.read(item, context);
        if (!('value' in read)) return { ...read, message: `"${item}": ${read.message}` };
        if (typeof read.value === 'string' && values.includes(read.value))
          return { message: `"${item}" is there twice.`, remedy: 'state it once' };
        values.push(read.value);
      }
      return { value: values };
    },
  };
}

/** The same cell where an empty one means "not known". */
export function orNull<T extends string | number>(cell: Cell<T>): Cell<T | null> {
  return cell;
}

function checked(form: string, schema: z.ZodType<string>, remedy: string): Cell<string> {
  return {
    form,
    read: (text): CellResult<string> => {
      const parsed = schema.safeParse(text);
      return parsed.success
        ? { value: parsed.data }
        : { message: parsed.error.issues.map((issue) => issue.message).join(' '), remedy };
    },
  };
}

function mapped<T extends FieldValue>(cell: Cell<string>, change: (text: string) => T): Cell<T> {
  return {
    form: cell.form,
    read: (text, context) => {
      const read = cell.read(text, context);
      return 'value' in read ? { value: change(read.value) } : read;
    },
  };
}
