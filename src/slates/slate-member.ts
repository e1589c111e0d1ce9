import { z } from 'zod';
import { hasRole, type Member } from '../access/member';
import { RequestError } from '../platform/request-error';
import type { SlateActor } from './slate-actor';

/** The member as the services of a slate know them. */
export function actorOf({ associationId, accountId }: Member): SlateActor {
  return { associationId, accountId };
}

export function mayChangeSlates(member: Member): boolean {
  return hasRole(member, 'assignor', 'administrator');
}

/**
 * An id out of an address.
 *
 * @throws {RequestError} `REQUEST.NOT_FOUND` when it cannot be one
 */
export function idFrom(text: string): string {
  if (!z.uuid().safeParse(text).success) throw new RequestError('REQUEST.NOT_FOUND');
  return text;
}
