import { Injectable, type CanActivate, type ExecutionContext } from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import type {} from '@fastify/cookie';
import type { FastifyRequest } from 'fastify';
import { RequestError } from '../platform/request-error';
import { FormTokens, visitCookie } from '../web/http/form-tokens';
import { formTokenField } from '../web/parts/form';
import { foreignFormKey } from './allow';
import type {} from './member';

const readingMethods = new Set(['GET', 'HEAD', 'OPTIONS']);

/**
 * Refuses what another site made a browser send. Browsers say where a request comes from (`Sec-Fetch-Site`, `Origin`); our forms
 * carry a token besides, bound to the session or to the visit. A program that sends its own session token is not concerned.
 */
@Injectable()
export class FormGuard implements CanActivate {
  constructor(
    private readonly reflector: Reflector,
    private readonly formTokens: FormTokens,
  ) {}

  canActivate(context: ExecutionContext): boolean {
    const request = context.switchToHttp().getRequest<FastifyRequest>();
    if (readingMethods.has(request.method) || request.signedIn?.byCookie === false) return true;
    const targets = [context.getHandler(), context.getClass()];
    if (this.reflector.getAllAndOverride<boolean | undefined>(foreignFormKey, targets) === true) return true;
    if (isForeign(request.headers)) refuse('The request comes from another site.');
    if (request.url.startsWith('/api/')) {
      if (isFormBody(request)) throw new RequestError('REQUEST.MEDIA_TYPE');
      // Without a cookie there is no standing that a foreign page could misuse.
      if (request.signedIn !== undefined && !saysOwnSite(request.headers)) refuse('State an Origin of ours.');
      return true;
    }
    const binding = request.formBinding ?? request.cookies[visitCookie];
    if (binding === undefined || !this.formTokens.isGood(binding, sentToken(request.body))) {
      refuse('This form is out of date. Load the page again and repeat what you did.');
    }
    return true;
  }
}

function refuse(detail: string): never {
  throw new RequestError('ACCESS.FORBIDDEN', { detail });
}

type Headers = FastifyRequest['headers'];

/** Whether the browser itself says that the request was made by another site. */
export function isForeign(headers: Headers): boolean {
  const site = headers['sec-fetch-site'];
  if (site !== undefined && site !== 'same-origin' && site !== 'none') return true;
  return headers.origin !== undefined && !isOwnOrigin(headers.origin, headers.host);
}

function saysOwnSite(headers: Headers): boolean {
  if (headers['sec-fetch-site'] === 'same-origin') return true;
  return headers.origin !== undefined && isOwnOrigin(headers.origin, headers.host);
}

/** Compares hosts only: behind a proxy that ends TLS the scheme of the request differs from that of the page. */
function isOwnOrigin(origin: string, host: string | undefined): boolean {
  return URL.canParse(origin) && new URL(origin).host === host;
}

function isFormBody(request: FastifyRequest): boolean {
  return /^(application\/x-www-form-urlencoded|text\/plain)/i.test(request.headers['content-type'] ?? '');
}

/** The token among the fields of a form, whether they came plainly or as parts of a multipart body. */
function sentToken(body: unknown): unknown {
  const field = ((body ?? {}) as Record<string, unknown>)[formTokenField];
  return typeof field === 'object' && field !== null ? (field as { value?: unknown }).value : field;
}
