import { z, type ZodObject, type ZodType } from 'zod';
import { catalogueEntry, type ErrorCode } from '../../platform/error-catalogue';
import { problemMediaType } from '../../platform/problem';
import { statusOf, type Operation } from './operation';
import { problemSchema } from './problem-schema';

type Json = Record<string, unknown>;

/** An OpenAPI 3.1 description. */
export interface OpenApiDocument extends Json {
  readonly openapi: '3.1.0';
  readonly info: { readonly title: string; readonly version: string; readonly description: string };
  readonly paths: Record<string, Record<string, OpenApiOperation>>;
}

export interface OpenApiOperation extends Json {
  readonly operationId: string;
  readonly summary: string;
  readonly tags: readonly string[];
  readonly parameters: readonly OpenApiParameter[];
  readonly requestBody?: {
    readonly required: boolean;
    readonly content: Record<string, { readonly schema: Json }>;
  };
  readonly responses: Record<string, OpenApiResponse>;
}

export interface OpenApiParameter {
  readonly name: string;
  readonly in: 'path' | 'query' | 'header';
  readonly required: boolean;
  readonly description?: string;
  readonly schema: Json;
}

export interface OpenApiResponse {
  readonly description: string;
  readonly content?: Record<string, { readonly schema: Json }>;
}

/** One operation and whether it needs nobody to be signed in. */
export interface DescribedOperation {
  readonly operation: Operation;
  readonly isOpen: boolean;
}

const commonErrors: readonly ErrorCode[] = ['REQUEST.INVALID', 'SERVICE.FAULT'];
const signedInErrors: readonly ErrorCode[] = [
  'ACCESS.NOT_SIGNED_IN',
  'ACCESS.FORBIDDEN',
  'REQUEST.NOT_FOUND',
];

/** Describes operations by the same schemas that they are checked with (OpenAPI Specification 3.1.0). */
export function openApiDocument(
  described: readonly DescribedOperation[],
  options: { version: string; publicUrl: string },
): OpenApiDocument {
  const paths: Record<string, Record<string, OpenApiOperation>> = {};
  for (const { operation, isOpen } of [...described].sort(byPath)) {
    const path = operation.path.replace(/:(\w+)/g, '{$1}');
    const methods = (paths[path] ??= {});
    methods[operation.method.toLowerCase()] = describe(operation, isOpen);
  }
  return {
    openapi: '3.1.0',
    info: {
      title: 'Crewloom',
      version: options.version,
      description:
        'Crew assignment and scheduling of a basketball referee association. Everything belongs to an association, named by ' +
        'its short name. Instants are RFC 3339 in UTC; local days and times are those of the venue. Money is in minor units. ' +
        'Errors are problem details (RFC 9457) with a permanent code.',
    },
    servers: [{ url: options.publicUrl }],
    security: [{ session: [] }, { bearer: [] }],
    paths,
    components: {
      securitySchemes: {
        session: { type: 'apiKey', in: 'cookie', name: 'crewloom-session' },
        bearer: { type: 'http', scheme: 'bearer', description: 'A session token.' },
      },
      schemas: { Problem: schemaOf(problemSchema, 'output') },
    },
  };
}

function byPath({ operation: left }: DescribedOperation, { operation: right }: DescribedOperation): number {
  return left.path < right.path ? -1 : left.path > right.path ? 1 : left.method < right.method ? -1 : 1;
}

function describe(operation: Operation, isOpen: boolean): OpenApiOperation {
  const { response } = operation;
  const errors = [...commonErrors, ...(isOpen ? [] : signedInErrors), ...(operation.errors ?? [])];
  return {
    operationId: operation.id,
    summary: operation.summary,
    ...(operation.description === undefined ? {} : { description: operation.description }),
    tags: [operation.tag],
    ...(isOpen ? { security: [] } : {}),
    parameters: [
      ...pathParameters(operation),
      ...parametersOf(operation.query, 'query'),
      ...parametersOf(operation.headers, 'header'),
    ],
    ...requestBodyOf(operation),
    responses: {
      [String(statusOf(operation))]: {
        description: 'Done.',
        ...(response === null ? {} : jsonContent(response)),
      },
      ...errorResponses(errors),
    },
  };
}

function requestBodyOf({ body, bodyType }: Operation): Pick<OpenApiOperation, 'requestBody'> {
  if (body === undefined) return {};
  const content = { [bodyType ?? 'application/json']: { schema: schemaOf(body, 'input') } };
  return { requestBody: { required: true, content } };
}

function jsonContent(schema: ZodType): Required<Pick<OpenApiResponse, 'content'>> {
  return { content: { 'application/json': { schema: schemaOf(schema, 'output') } } };
}

function pathParameters(operation: Operation): OpenApiParameter[] {
  const stated = parametersOf(operation.params, 'path');
  return [...operation.path.matchAll(/:(\w+)/g)].map(([, name = '']) => {
    const found = stated.find((parameter) => parameter.name === name);
    return found === undefined
      ? { name, in: 'path', required: true, schema: { type: 'string' } }
      : { ...found, required: true };
  });
}

function parametersOf(schema: ZodObject | undefined, place: OpenApiParameter['in']): OpenApiParameter[] {
  if (schema === undefined) return [];
  const whole = schemaOf(schema, 'input');
  const required = (whole['required'] ?? []) as string[];
  return Object.entries((whole['properties'] ?? {}) as Record<string, Json>).map(([name, described]) => {
    const { description, ...rest } = described;
    return {
      name,
      in: place,
      required: required.includes(name),
      ...(typeof description === 'string' ? { description } : {}),
      schema: rest,
    };
  });
}

function errorResponses(codes: readonly ErrorCode[]): Record<string, OpenApiResponse> {
  const byStatus = new Map<number, ErrorCode[]>();
  for (const code of new Set(codes)) {
    const { status } = catalogueEntry(code);
    byStatus.set(status, [...(byStatus.get(status) ?? []), code]);
  }
  return Object.fromEntries(
    [...byStatus].map(([status, list]) => [
      String(status),
      {
        description: list.map((code) => `${code}: ${catalogueEntry(code).text}`).join(' '),
        content: { [problemMediaType]: { schema: { $ref: '#/components/schemas/Problem' } } },
      },
    ]),
  );
}

/** The JSON Schema (draft 2020-12, that of OpenAPI 3.1) of what is sent or answered. */
export function schemaOf(schema: ZodType, io: 'input' | 'output'): Json {
  const { $schema: _dialect, ...rest } = z.toJSONSchema(schema, { io, unrepresentable: 'any' }) as Json;
  return rest;
}
