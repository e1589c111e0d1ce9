import { createHmac } from 'node:crypto';
import { isSameSecret } from '../../platform/random';

/** Name of the cookie that binds forms to a browser in which nobody is signed in. */
export const visitCookie = 'crewloom-visit';

/**
 * Proofs that a form was drawn by us for the browser that sends it. A page elsewhere can make a browser send a form with its
 * cookies, but cannot read this out of one of our pages.
 */
export class FormTokens {
  constructor(private readonly secret: string) {}

  /** @param binding what only this browser and we know: the hash of its session, or its visit cookie */
  tokenFor(binding: string): string {
    return createHmac('sha256', this.secret).update(`form ${binding}`).digest('base64url');
  }

  isGood(binding: string, token: unknown): boolean {
    return typeof token === 'string' && isSameSecret(token, this.tokenFor(binding));
  }
}
