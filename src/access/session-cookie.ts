import type {} from '@fastify/cookie';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { sessionDays } from './sessions';

export const sessionCookie = 'crewloom-session';

/** The session token that a request presents, and whether a browser sent it by itself. */
export function presentedToken(
  request: Pick<FastifyRequest, 'headers' | 'cookies'>,
): { token: string; byCookie: boolean } | null {
  const bearer = /^Bearer ([\w-]{20,200})$/i.exec(request.headers.authorization ?? '')?.[1];
  if (bearer !== undefined) return { token: bearer, byCookie: false };
  const cookie = request.cookies[sessionCookie];
  return cookie === undefined || cookie === '' ? null : { token: cookie, byCookie: true };
}

/** @param isSecure whether people reach the service by https */
export function setSessionCookie(reply: FastifyReply, token: string, isSecure: boolean): void {
  void reply.setCookie(sessionCookie, token, {
    httpOnly: true,
    sameSite: 'lax',
    path: '/',
    maxAge: sessionDays * 86_400,
    secure: isSecure,
  });
}

export function clearSessionCookie(reply: FastifyReply): void {
  void reply.clearCookie(sessionCookie, { path: '/' });
}
