import { Injectable, type PipeTransform } from '@nestjs/common';
import type { ZodError, ZodType } from 'zod';
import { RequestError, type RequestFault } from './request-error';

/**
 * Reads what a request brought.
 *
 * @throws {RequestError} `REQUEST.INVALID` with every fault
 */
export function parseRequest<T>(schema: ZodType<T>, value: unknown): T {
  const parsed = schema.safeParse(value);
  if (parsed.success) return parsed.data;
  throw new RequestError('REQUEST.INVALID', { faults: faultsOf(parsed.error) });
}

/** As `parseRequest`, for the parameters of a Nest handler: `@Body(new ZodPipe(schema)) body`. */
@Injectable()
export class ZodPipe<T> implements PipeTransform<unknown, T> {
  constructor(private readonly schema: ZodType<T>) {}

  transform(value: unknown): T {
    return parseRequest(this.schema, value);
  }
}

/** The faults that zod found, each with its place in words that a form or a caller can find again. */
export function faultsOf(error: ZodError): RequestFault[] {
  return error.issues.map(({ path, message }) => ({ path: pathText(path), message }));
}

function pathText(path: readonly PropertyKey[]): string {
  return path.reduce<string>((text, step) => {
    if (typeof step === 'number') return `${text}[${step}]`;
    return text === '' ? String(step) : `${text}.${String(step)}`;
  }, '');
}
