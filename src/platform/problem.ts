import { HttpException } from '@nestjs/common';
import { ZodError } from 'zod';
import { catalogueEntry, type ErrorCode } from './error-catalogue';
import { faultsOf } from './parse-request';
import { RequestError, type RequestFault } from './request-error';

/** Problem details by RFC 9457, with our own members `code`, `errors` and `requestId`. */
export interface Problem {
  /** Address of a page that explains the code. */
  readonly type: string;
  readonly title: string;
  readonly status: number;
  readonly detail?: string;
  readonly code: ErrorCode;
  readonly errors?: readonly RequestFault[];
  readonly requestId?: string;
}

export const problemMediaType = 'application/problem+json';

/**
 * @param options.publicUrl address of the service, without a trailing slash; the type is `publicUrl/problems/CODE`
 */
export function problemOf(
  error: RequestError,
  options: { publicUrl: string; requestId?: string | undefined },
): Problem {
  const { text, status } = catalogueEntry(error.code);
  return {
    type: `${options.publicUrl}/problems/${error.code}`,
    title: text,
    status,
    ...(error.detail !== null && { detail: error.detail }),
    code: error.code,
    ...(error.faults.length > 0 && { errors: error.faults }),
    ...(options.requestId !== undefined && { requestId: options.requestId }),
  };
}

const codeByStatus: Readonly<Record<number, ErrorCode>> = {
  400: 'REQUEST.MALFORMED',
  401: 'ACCESS.NOT_SIGNED_IN',
  403: 'ACCESS.FORBIDDEN',
  404: 'REQUEST.NOT_FOUND',
  405: 'REQUEST.METHOD',
  409: 'REQUEST.CONFLICT',
  412: 'REQUEST.PRECONDITION',
  413: 'REQUEST.TOO_LARGE',
  415: 'REQUEST.MEDIA_TYPE',
  422: 'REQUEST.INVALID',
  429: 'REQUEST.TOO_MANY',
  503: 'SERVICE.UNAVAILABLE',
};
// Refused or lost connections, and the server's own words for starting, stopping and being full (SQLSTATE classes 08, 53, 57).
const databaseIsAway = /^(ECONNREFUSED|ECONNRESET|ETIMEDOUT|08\w{3}|53300|57P0\d)$/;

/** Turns whatever was thrown into a request error; what nobody expected becomes `SERVICE.FAULT`, and says nothing of itself. */
export function asRequestError(error: unknown): RequestError {
  if (error instanceof RequestError) return error;
  if (error instanceof ZodError) {
    return new RequestError('REQUEST.INVALID', { faults: faultsOf(error), cause: error });
  }
  const code = codeByStatus[statusOf(error)];
  if (code !== undefined) return new RequestError(code, { cause: error });
  return new RequestError(isDatabaseAway(error) ? 'SERVICE.UNAVAILABLE' : 'SERVICE.FAULT', { cause: error });
}

/** Nest and Fastify both say it with a status; anything below 400 is no error of theirs. */
function statusOf(error: unknown): number {
  if (error instanceof HttpException) return error.getStatus();
  const { statusCode } = (error ?? {}) as { statusCode?: unknown };
  return typeof statusCode === 'number' ? statusCode : 500;
}

function isDatabaseAway(error: unknown): boolean {
  const { code, driverError } = (error ?? {}) as { code?: unknown; driverError?: { code?: unknown } };
  return [code, driverError?.code].some((text) => typeof text === 'string' && databaseIsAway.test(text));
}
