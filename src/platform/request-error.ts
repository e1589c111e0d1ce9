import { catalogueEntry, type ErrorCode } from './error-catalogue';

/** One thing wrong with what was sent. */
export interface RequestFault {
  /** Where, such as `games[2].date`; empty for the whole. */
  readonly path: string;
  readonly message: string;
}

export interface RequestErrorOptions {
  /** What is wrong in this case, for the person who asked; it is public. */
  readonly detail?: string;
  /** Every fault, not only the first. */
  readonly faults?: readonly RequestFault[];
  /** Headers that the answer needs, such as `Allow` or `Retry-After`. */
  readonly headers?: Readonly<Record<string, string>>;
  readonly cause?: unknown;
}

/** A request that must be refused, with a code of the catalogue that callers can rely on. */
export class RequestError extends Error {
  readonly status: number;
  readonly detail: string | null;
  readonly faults: readonly RequestFault[];
  readonly headers: Readonly<Record<string, string>>;

  constructor(
    readonly code: ErrorCode,
    options: RequestErrorOptions = {},
  ) {
    const entry = catalogueEntry(code);
    super(options.detail ?? entry.text, options.cause === undefined ? undefined : { cause: options.cause });
    this.name = 'RequestError';
    this.status = entry.status;
    this.detail = options.detail ?? null;
    this.faults = options.faults ?? [];
    this.headers = options.headers ?? {};
  }
}
