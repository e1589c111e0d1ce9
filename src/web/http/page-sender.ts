import type {} from '@fastify/cookie';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { newToken } from '../../platform/random';
import type { NavigationEntry, Visitor } from '../visitor';
import type { PageContent, PageResult } from './answer';
import { visitCookie, type FormTokens } from './form-tokens';
import { renderPage } from './page-renderer';

declare module 'fastify' {
  interface FastifyRequest {
    visitor?: Visitor;
    /** What binds forms to the browser of a session. */
    formBinding?: string;
  }
}

/** Draws pages for requests: with the visitor's ways, and forms bound to the visitor's browser. */
export class PageSender {
  constructor(
    private readonly options: {
      readonly navigation: readonly NavigationEntry[];
      readonly formTokens: FormTokens;
      /** Whether people reach the service by https, so that cookies may say so. */
      readonly isSecure: () => boolean;
    },
  ) {}

  /** Sets status and headers of a reply and returns its body. */
  draw(result: PageResult, request: FastifyRequest, reply: FastifyReply): string {
    if (result.kind === 'see-other') {
      void reply.status(303).header('location', result.path).header('cache-control', 'no-store');
      return '';
    }
    void reply
      .status(result.status ?? 200)
      .header('content-type', 'text/html; charset=utf-8')
      .header('cache-control', 'no-store');
    return this.html(result, request, reply);
  }

  html(content: PageContent, request: FastifyRequest, reply: FastifyReply | null): string {
    return renderPage(content, {
      visitor: request.visitor ?? null,
      navigation: this.options.navigation,
      url: request.url,
      formToken: this.options.formTokens.tokenFor(this.binding(request, reply)),
    });
  }

  private binding(request: FastifyRequest, reply: FastifyReply | null): string {
    const known = request.formBinding ?? request.cookies[visitCookie];
    if (known !== undefined) return known;
    const { secret } = newToken();
    void reply?.setCookie(visitCookie, secret, {
      httpOnly: true,
      sameSite: 'lax',
      path: '/',
      secure: this.options.isSecure(),
    });
    return secret;
  }
}
