import { Injectable, type CanActivate, type ExecutionContext } from '@nestjs/common';
import { Reflector } from '@nestjs/core';
import type { FastifyRequest } from 'fastify';
import { RequestError } from '../platform/request-error';
import type {} from '../web/http/page-sender';
import type { Visitor } from '../web/visitor';
import { allowanceKey, type Allowance } from './allow';
import type { Member } from './member';
import { roles, type Role } from './role';
import { presentedToken } from './session-cookie';
import { Sessions, type Identity } from './sessions';

/** Lets a request through to a route when the route is allowed to who sends it; a route that is allowed to nobody stays shut. */
@Injectable()
export class AccessGuard implements CanActivate {
  constructor(
    private readonly sessions: Sessions,
    private readonly reflector: Reflector,
  ) {}

  async canActivate(context: ExecutionContext): Promise<boolean> {
    const request = context.switchToHttp().getRequest<FastifyRequest>();
    const allowances =
      this.reflector.getAllAndOverride<readonly Allowance[] | undefined>(allowanceKey, [
        context.getHandler(),
        context.getClass(),
      ]) ?? [];
    const identity = await this.identify(request);
    if (allowances.includes('anyone')) return true;
    if (identity === null) throw new RequestError('ACCESS.NOT_SIGNED_IN');
    if (allowances.includes('signed-in')) return true;
    // Whether another association exists is nobody's business, so both cases answer the same.
    if (identity.member === null) throw new RequestError('REQUEST.NOT_FOUND');
    const verdict = judgeMember(allowances, identity.member, parametersOf(request));
    if (verdict !== 'allowed') throw new RequestError(verdict);
    return true;
  }

  private async identify(request: FastifyRequest): Promise<Identity | null> {
    const presented = presentedToken(request);
    if (presented === null) return null;
    const slug = parametersOf(request)['slug'] ?? null;
    const identity = await this.sessions.identify(presented.token, slug, presented.byCookie);
    if (identity === null) return null;
    request.signedIn = identity.signedIn;
    request.formBinding = identity.signedIn.sessionHash;
    if (identity.member !== null) request.member = identity.member;
    request.visitor = visitorOf(identity);
    return identity;
  }
}

/** Whether a member may take a route that is open to `allowances`; one that fits is enough. */
export function judgeMember(
  allowances: readonly Allowance[],
  member: Pick<Member, 'roles' | 'officialId'>,
  parameters: Readonly<Record<string, string | undefined>>,
): 'allowed' | 'ACCESS.FORBIDDEN' | 'REQUEST.NOT_FOUND' {
  if (allowances.includes('member')) return 'allowed';
  if (allowances.some((allowance) => isRole(allowance) && member.roles.includes(allowance))) return 'allowed';
  if (!allowances.includes('own official') || member.officialId === null) return 'ACCESS.FORBIDDEN';
  return parameters['officialId'] === member.officialId ? 'allowed' : 'REQUEST.NOT_FOUND';
}

function isRole(allowance: Allowance): allowance is Role {
  return (roles as readonly string[]).includes(allowance);
}

function parametersOf(request: FastifyRequest): Record<string, string | undefined> {
  return (request.params ?? {}) as Record<string, string | undefined>;
}

function visitorOf({ signedIn, member }: Identity): Visitor {
  return {
    displayName: signedIn.displayName,
    roles: member?.roles ?? [],
    association: member?.association ?? null,
  };
}
