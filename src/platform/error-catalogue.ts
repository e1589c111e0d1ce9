/** How a request error is answered and logged. */
export interface CatalogueEntry {
  /** HTTP status, RFC 9110 section 15. */
  readonly status: number;
  /** `error`: somebody must look; `warn`: worth counting; `info`: an everyday refusal. */
  readonly logLevel: 'info' | 'warn' | 'error';
  /** What everybody may read: what is wrong and what to try. */
  readonly text: string;
}

/**
 * Every error that a request can end in, by its permanent code AREA.NAME. Callers branch on the code, so none is ever renamed or
 * given another meaning.
 */
export const errorCatalogue = {
  'ACCESS.FORBIDDEN': {
    status: 403,
    logLevel: 'info',
    text: 'Your role does not allow this. Ask an administrator of your association.',
  },
  'ACCESS.LINK_INVALID': {
    status: 410,
    logLevel: 'info',
    text: 'This link has been used, has expired or was replaced. Ask for a new one.',
  },
  'ACCESS.NOT_SIGNED_IN': { status: 401, logLevel: 'info', text: 'Sign in first.' },
  'REQUEST.CONFLICT': {
    status: 409,
    logLevel: 'info',
    text: 'Somebody changed this in the meantime. Look at it again and repeat what is still needed.',
  },
  'REQUEST.INVALID': { status: 422, logLevel: 'info', text: 'Some of what you sent cannot be used.' },
  'REQUEST.MALFORMED': { status: 400, logLevel: 'info', text: 'The request cannot be read.' },
  'REQUEST.MEDIA_TYPE': {
    status: 415,
    logLevel: 'info',
    text: 'This kind of content is not taken here.',
  },
  'REQUEST.METHOD': { status: 405, logLevel: 'info', text: 'This cannot be done at this address.' },
  'REQUEST.NOT_FOUND': { status: 404, logLevel: 'info', text: 'There is nothing at this address.' },
  'REQUEST.PRECONDITION': {
    status: 412,
    logLevel: 'info',
    text: 'What you looked at is no longer the newest. Load it again.',
  },
  'REQUEST.TOO_LARGE': { status: 413, logLevel: 'warn', text: 'What you sent is too large.' },
  'REQUEST.TOO_MANY': { status: 429, logLevel: 'warn', text: 'Too many requests. Wait a little.' },
  'SERVICE.FAULT': {
    status: 500,
    logLevel: 'error',
    text: 'Something went wrong on our side. Nothing was changed; try again, and report it if it stays.',
  },
  'SERVICE.UNAVAILABLE': {
    status: 503,
    logLevel: 'error',
    text: 'The service cannot reach its database just now. Try again in a minute.',
  },
} as const satisfies Record<string, CatalogueEntry>;

export type ErrorCode = keyof typeof errorCatalogue;

export function catalogueEntry(code: ErrorCode): CatalogueEntry {
  return errorCatalogue[code];
}

/** Whether a text, from an address say, is a code of ours. */
export function isErrorCode(text: string): text is ErrorCode {
  return Object.hasOwn(errorCatalogue, text);
}
