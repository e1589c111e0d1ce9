import { InvalidArgumentError } from 'commander';

/** Reads an option that is a number above 0. */
export function positiveNumber(text: string): number {
  const value = Number(text);
  if (!(value > 0 && Number.isFinite(value))) throw new InvalidArgumentError('give a number above 0');
  return value;
}

/** Reads an option that is a whole number from 0. */
export function wholeNumber(text: string): number {
  const value = Number(text);
  if (!/^\d+$/.test(text) || !Number.isSafeInteger(value))
    throw new InvalidArgumentError('give a whole number');
  return value;
}

/** Reads an option that is a whole number from 1. */
export function countOption(text: string): number {
  if (!/^[1-9]\d{0,8}$/.test(text)) throw new InvalidArgumentError('give a whole number above 0');
  return Number(text);
}
