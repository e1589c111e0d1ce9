import {
  applyDecorators,
  createParamDecorator,
  HttpCode,
  RequestMapping,
  RequestMethod,
  SetMetadata,
  type ExecutionContext,
} from '@nestjs/common';
import type { FastifyRequest } from 'fastify';
import type { z, ZodObject, ZodType } from 'zod';
import type { ErrorCode } from '../../platform/error-catalogue';
import { faultsOf } from '../../platform/parse-request';
import { RequestError, type RequestFault } from '../../platform/request-error';

/** One thing a program can ask of the service: its address, what it takes and what it gives. */
export interface Operation<
  Params extends ZodObject = ZodObject,
  Query extends ZodObject = ZodObject,
  Headers extends ZodObject = ZodObject,
  Body extends ZodType = ZodType,
  Response extends ZodType | null = ZodType | null,
> {
  /** Permanent and unique, such as `listSlates`. */
  readonly id: string;
  readonly method: 'GET' | 'POST' | 'PUT' | 'DELETE';
  /** Complete, with `:name` for parameters; those that `params` leaves out are texts. */
  readonly path: `/api/v1${string}`;
  readonly tag: string;
  readonly summary: string;
  readonly description?: string;
  readonly params?: Params;
  readonly query?: Query;
  readonly headers?: Headers;
  readonly body?: Body;
  /** Says in which media type the body comes, JSON unless stated. */
  readonly bodyType?: 'application/json' | 'multipart/form-data';
  /** `null`: no content, status 204. What a handler returns beyond the schema is left out of the answer. */
  readonly response: Response;
  /** HTTP status of success, 200 (or 204) unless stated. */
  readonly status?: number;
  /** Codes particular to it, beside those that every operation can end in. */
  readonly errors?: readonly ErrorCode[];
}

type AnyOperation = Operation;
type Read<Schema> = Schema extends ZodType ? z.output<Schema> : never;

/** What a handler receives: each part parsed by its schema. */
export interface InputOf<Op extends AnyOperation> {
  readonly params: Read<Op['params']>;
  readonly query: Read<Op['query']>;
  readonly headers: Read<Op['headers']>;
  readonly body: Read<Op['body']>;
}

/** What a handler returns. */
export type OutputOf<Op extends AnyOperation> = Op['response'] extends ZodType
  ? z.input<Op['response']>
  : void;

export function defineOperation<const Op extends AnyOperation>(operation: Op): Op {
  return operation;
}

const operationKey = 'crewloom:operation';
const methods = {
  GET: RequestMethod.GET,
  POST: RequestMethod.POST,
  PUT: RequestMethod.PUT,
  DELETE: RequestMethod.DELETE,
} as const;

/** Serves an operation with the decorated handler. */
export function Serve(operation: AnyOperation): MethodDecorator {
  return applyDecorators(
    RequestMapping({ method: methods[operation.method], path: operation.path }),
    HttpCode(statusOf(operation)),
    SetMetadata(operationKey, operation),
  );
}

export function statusOf(operation: AnyOperation): number {
  return operation.status ?? (operation.response === null ? 204 : 200);
}

/** The operation that a handler serves; `null` for pages. */
export function operationOf(handler: object): AnyOperation | null {
  const found: unknown = Reflect.getMetadata(operationKey, handler);
  return found === undefined ? null : (found as AnyOperation);
}

/**
 * The request as its operation describes it.
 *
 * @throws {RequestError} `REQUEST.INVALID` with every fault of every part
 */
export const Input = createParamDecorator((_data: unknown, context: ExecutionContext): unknown => {
  const operation = operationOf(context.getHandler());
  if (operation === null) throw new Error('Only the handler of an operation has an input.');
  return readInput(operation, context.switchToHttp().getRequest<FastifyRequest>());
});

function readInput(
  operation: AnyOperation,
  request: Pick<FastifyRequest, 'params' | 'query' | 'headers' | 'body'>,
): Record<string, unknown> {
  const faults: RequestFault[] = [];
  const read = (schema: ZodType | undefined, value: unknown, prefix: string) => {
    const parsed = schema?.safeParse(value);
    if (parsed?.success === false) {
      const found = faultsOf(parsed.error);
      faults.push(...found.map(({ path, message }) => ({ path: `${prefix}${path}`, message })));
    }
    return parsed?.data;
  };
  const input = {
    params: read(operation.params, request.params, ''),
    query: read(operation.query, request.query, ''),
    headers: read(operation.headers, request.headers, ''),
    body: read(operation.body, request.body ?? {}, ''),
  };
  if (faults.length > 0) throw new RequestError('REQUEST.INVALID', { faults });
  return input;
}
