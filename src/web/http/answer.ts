import type { VNode } from 'preact';

/** A page that a handler answers with; the frame is drawn around it. */
export interface PageContent {
  readonly kind: 'page';
  readonly title: string;
  readonly body: VNode;
  /** HTTP status, 200 unless stated. */
  readonly status?: number;
  /** Seconds after which a browser without script asks again. */
  readonly refreshSeconds?: number;
}

/** "Look there next", the answer to a form that did its work (RFC 9110, 303 See Other). */
export interface Redirection {
  readonly kind: 'see-other';
  readonly path: string;
}

export type PageResult = PageContent | Redirection;

export function page(content: Omit<PageContent, 'kind'>): PageContent {
  return { kind: 'page', ...content };
}

/** @param path path of ours, with its query */
export function seeOther(path: string): Redirection {
  return { kind: 'see-other', path };
}

export function isPageResult(value: unknown): value is PageResult {
  const { kind } = (value ?? {}) as { kind?: unknown };
  return kind === 'see-other' || (kind === 'page' && 'body' in (value as object));
}
