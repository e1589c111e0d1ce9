import { Reflector } from '@nestjs/core';
import type { ExecutionContext } from '@nestjs/common';
import { AccessGuard, judgeMember } from '../../../src/access/access.guard';
import { Allow, type Allowance } from '../../../src/access/allow';
import { isForeign } from '../../../src/access/form.guard';
import { localPath } from '../../../src/access/local-path';
import { roles, type Role } from '../../../src/access/role';
import type { Sessions } from '../../../src/access/sessions';

// Goal: who may take a route follows from its entry alone, and a route without one is shut. Method: the guard with a session
// store that knows one member, and the rule by table.
const member = {
  accountId: 'a',
  displayName: 'M',
  email: 'm@example.org',
  sessionHash: 'h',
  byCookie: true,
  associationId: 'x',
  association: { slug: 's', name: 'S', timeZone: 'Europe/London', language: 'en-GB', currency: 'GBP' },
  roles: [...roles] as Role[],
  officialId: 'me',
};

class Routes {
  without(this: void): void {}

  @Allow('anyone')
  open(this: void): void {}

  @Allow('treasurer')
  treasurer(this: void): void {}
}

function asked(handler: () => void, request: object): ExecutionContext {
  return {
    getHandler: () => handler,
    getClass: () => Routes,
    switchToHttp: () => ({ getRequest: () => ({ headers: {}, cookies: {}, params: {}, ...request }) }),
  } as unknown as ExecutionContext;
}

const sessions = { identify: async () => ({ signedIn: member, member }) } as unknown as Sessions;
const guard = new AccessGuard(sessions, new Reflector());
const routes = Routes.prototype;
const signedIn = { cookies: { 'crewloom-session': 'x'.repeat(43) }, params: { slug: 's' } };

test('a route without an entry is refused to a member who holds every role', async () => {
  await expect(guard.canActivate(asked(routes.without, signedIn))).rejects.toMatchObject({
    code: 'ACCESS.FORBIDDEN',
  });
  await expect(guard.canActivate(asked(routes.without, {}))).rejects.toMatchObject({
    code: 'ACCESS.NOT_SIGNED_IN',
  });
  await expect(guard.canActivate(asked(routes.treasurer, signedIn))).resolves.toBe(true);
  await expect(guard.canActivate(asked(routes.open, {}))).resolves.toBe(true);
});

test.each<[Allowance[], Role[], string | undefined, string]>([
  [['member'], ['treasurer'], undefined, 'allowed'],
  [['assignor'], ['assignor'], undefined, 'allowed'],
  [['assignor', 'administrator'], ['official'], undefined, 'ACCESS.FORBIDDEN'],
  [['own official'], ['official'], 'me', 'allowed'],
  [['own official'], ['official'], 'other', 'REQUEST.NOT_FOUND'],
  [['own official', 'assignor'], ['assignor'], 'other', 'allowed'],
  [['official'], ['assignor'], undefined, 'ACCESS.FORBIDDEN'],
  [[], ['administrator'], undefined, 'ACCESS.FORBIDDEN'],
])('allowed to %j, asked as %j for %s: %s', (allowances, held, officialId, verdict) => {
  const officialOf = held.includes('official') ? 'me' : null;
  expect(judgeMember(allowances, { roles: held, officialId: officialOf }, { officialId })).toBe(verdict);
});

test.each([
  [{ 'sec-fetch-site': 'cross-site' }, true],
  [{ 'sec-fetch-site': 'same-site' }, true],
  [{ 'sec-fetch-site': 'same-origin', host: 'a.example' }, false],
  [{ 'sec-fetch-site': 'none' }, false],
  [{ origin: 'https://b.example', host: 'a.example' }, true],
  [{ origin: 'null', host: 'a.example' }, true],
  [{ origin: 'https://a.example', host: 'a.example' }, false],
  [{ origin: 'https://a.example:444', host: 'a.example' }, true],
  [{}, false],
])('a request with %j comes from another site: %s', (headers, expected) => {
  expect(isForeign(headers)).toBe(expected);
});

test.each([
  ['/marram-coast/slates?page=2#crews', '/marram-coast/slates?page=2#crews'],
  ['/', '/'],
  ['//evil.example', '/'],
  ['/\\evil.example', '/'],
  ['/\t/evil.example', '/'],
  ['https://evil.example', '/'],
  ['javascript:alert(1)', '/'],
  ['', '/'],
  [undefined, '/'],
  [['/a'], '/'],
  [`/${'a'.repeat(600)}`, '/'],
])('a browser is sent on from %j to %j', (text, path) => {
  expect(localPath(text)).toBe(path);
});
