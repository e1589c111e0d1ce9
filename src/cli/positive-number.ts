import { InvalidArgumentError } from 'commander';

/** An option's value that must be a number above 0. */
export function positiveNumber(text: string): number {
  const value = Number(text);
  if (!(value > 0 && Number.isFinite(value))) throw new InvalidArgumentError('give a number above 0');
  return value;
}
