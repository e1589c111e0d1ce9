import { createParamDecorator, type ExecutionContext } from '@nestjs/common';
import type { FastifyRequest } from 'fastify';
import type { Role } from './role';

/** A signed-in account. */
export interface SignedIn {
  readonly accountId: string;
  readonly displayName: string;
  readonly email: string;
  /** SHA-256 of the session's token, hexadecimal. */
  readonly sessionHash: string;
  /** False for a session token sent as `Authorization: Bearer`, which no foreign page can make a browser send. */
  readonly byCookie: boolean;
}

/** A signed-in account in one association. */
export interface Member extends SignedIn {
  readonly associationId: string;
  readonly association: {
    readonly slug: string;
    readonly name: string;
    /** IANA zone. */
    readonly timeZone: string;
    /** BCP 47 tag of numbers and dates. */
    readonly language: string;
    /** ISO 4217 code. */
    readonly currency: string;
  };
  readonly roles: readonly Role[];
  /** The official that the member is. */
  readonly officialId: string | null;
}

declare module 'fastify' {
  interface FastifyRequest {
    signedIn?: SignedIn;
    member?: Member;
  }
}

export function hasRole(member: Pick<Member, 'roles'>, ...roles: readonly Role[]): boolean {
  return roles.some((role) => member.roles.includes(role));
}

/** The member who asks; only on routes that are allowed to members. */
export const CurrentMember = createParamDecorator((_data: unknown, context: ExecutionContext): Member => {
  const { member } = context.switchToHttp().getRequest<FastifyRequest>();
  if (member === undefined) throw new Error('The route is not behind a membership.');
  return member;
});

/** The account that asks; only on routes that are not allowed to anyone. */
export const CurrentAccount = createParamDecorator((_data: unknown, context: ExecutionContext): SignedIn => {
  const { signedIn } = context.switchToHttp().getRequest<FastifyRequest>();
  if (signedIn === undefined) throw new Error('The route is not behind a session.');
  return signedIn;
});
