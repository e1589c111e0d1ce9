import { randomUUID } from 'node:crypto';
import pino, { stdTimeFunctions, type DestinationStream, type Logger } from 'pino';

export type Log = Logger;

/** Stands where a secret was. */
export const redacted = '[redacted]';

const secretFields = ['authorization', 'cookie', 'password', 'token', 'secret', 'set-cookie'];
// Addresses that are a key in themselves: the segment behind each of these, and such query parameters.
const secretSegments = /\/(feeds?|cal|reply|sign-in|session|unsubscribe)\/[^/?#\s"']+/gi;
const secretParameters = /([?&](?:token|key|code|secret|signature)=)[^&#\s"']+/gi;
const passwordInUrl = /(\b[a-z][a-z0-9+.-]*:\/\/[^/:@\s]*:)[^@\s/]+@/gi;

/**
 * A log of one JSON object a line. Passwords, cookies, authorization headers and tokens never reach it, whether they stand in a
 * field of their own, in an address, or in the text of an error.
 *
 * @param options.destination standard error unless stated, so that a command's answer on standard output stays clean
 */
export function createLog(options: { level: string; destination?: DestinationStream }): Log {
  return pino(
    {
      level: options.level,
      base: null,
      timestamp: stdTimeFunctions.isoTime,
      redact: {
        paths: secretFields.flatMap((field) => {
          const key = /^\w+$/.test(field) ? `.${field}` : `["${field}"]`;
          return [key.replace(/^\./, ''), `*${key}`, `*.*${key}`];
        }),
        censor: redacted,
      },
      serializers: {
        err: (error: unknown) => scrub(pino.stdSerializers.err(error as Error)),
        url: (url: unknown) => (typeof url === 'string' ? redactText(url) : url),
        req: (request: { id?: unknown; method?: string; url?: string }) => ({
          id: request.id,
          method: request.method,
          url: redactText(request.url ?? ''),
        }),
      },
      hooks: {
        logMethod(args, method) {
          const clean = args.map((arg: unknown) => (typeof arg === 'string' ? redactText(arg) : arg));
          method.apply(this, clean as Parameters<typeof method>);
        },
      },
    },
    options.destination ?? pino.destination({ dest: 2, sync: true }),
  );
}

/** Takes secrets out of a text that contains addresses. */
export function redactText(text: string): string {
  return text
    .replace(passwordInUrl, `$1${redacted}@`)
    .replace(secretSegments, (_, segment: string) => `/${segment}/${redacted}`)
    .replace(secretParameters, `$1${redacted}`);
}

/** Names one request in the log and in the answer: the caller's own id when it is harmless, else a new one. */
export function requestId(header: string | string[] | undefined): string {
  return typeof header === 'string' && /^[\w.-]{8,64}$/.test(header) ? header : randomUUID();
}

/** Errors carry text from anywhere, a failed query even its parameters. */
function scrub(error: object): object {
  const {
    parameters: _parameters,
    query: _query,
    driverError: _driverError,
    ...rest
  } = error as Record<string, unknown>;
  return Object.fromEntries(
    Object.entries(rest).map(([key, value]) => [key, typeof value === 'string' ? redactText(value) : value]),
  );
}
