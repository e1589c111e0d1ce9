import { Controller, Req } from '@nestjs/common';
import type { FastifyRequest } from 'fastify';
import { z } from 'zod';
import { RequestError } from '../platform/request-error';
import { Tenancy } from '../platform/tenancy';
import { defineOperation, Input, Serve, type InputOf, type OutputOf } from '../web/api/operation';
import { Allow } from './allow';
import { associationPolicySchema, slateWeightsSchema, travelModelSchema } from './association-policy';
import { Association } from './association.entity';
import { deviceLabel } from './device-label';
import { LevelStep } from './level-step.entity';
import { CurrentAccount, CurrentMember, type Member, type SignedIn } from './member';
import { roles } from './role';
import { Sessions } from './sessions';
import { SignIn } from './sign-in';

const tag = 'Access';
const rolesField = z.array(z.enum(roles));

export const openSession = defineOperation({
  id: 'openSession',
  method: 'POST',
  path: '/api/v1/sessions',
  tag,
  summary: 'Exchange a one-time link for a session token',
  description:
    'The token is the last part of the link that was sent by e-mail. It is good once, within 15 minutes.',
  body: z.object({ token: z.string().min(20).max(200) }),
  response: z.object({ sessionToken: z.string() }),
  status: 201,
  errors: ['ACCESS.LINK_INVALID'],
});

export const closeSession = defineOperation({
  id: 'closeSession',
  method: 'DELETE',
  path: '/api/v1/sessions/current',
  tag,
  summary: 'End the session at hand',
  response: null,
});

export const readAccount = defineOperation({
  id: 'readAccount',
  method: 'GET',
  path: '/api/v1/account',
  tag,
  summary: 'Who is signed in, and where they are a member',
  response: z.object({
    displayName: z.string(),
    email: z.string(),
    associations: z.array(z.object({ slug: z.string(), name: z.string(), roles: rolesField })),
  }),
});

export const readAssociation = defineOperation({
  id: 'readAssociation',
  method: 'GET',
  path: '/api/v1/associations/:slug',
  tag,
  summary: 'One association: its zone, ladder of levels, policy and weights',
  response: z.object({
    slug: z.string(),
    name: z.string(),
    timeZone: z.string(),
    language: z.string(),
    currency: z.string(),
    emergencyNumber: z.string(),
    levels: z.array(z.object({ level: z.number().int(), name: z.string() })),
    policy: associationPolicySchema,
    weights: slateWeightsSchema,
    travelModel: travelModelSchema,
  }),
});

@Controller()
export class AccessApi {
  constructor(
    private readonly tenancy: Tenancy,
    private readonly signIn: SignIn,
    private readonly sessions: Sessions,
  ) {}

  @Serve(openSession)
  @Allow('anyone')
  async open(
    @Input() { body }: InputOf<typeof openSession>,
    @Req() request: FastifyRequest,
  ): Promise<OutputOf<typeof openSession>> {
    const outcome = await this.signIn.use(body.token, deviceLabel(request.headers['user-agent']));
    if (outcome.kind === 'refused') throw new RequestError('ACCESS.LINK_INVALID');
    return { sessionToken: outcome.sessionToken };
  }

  @Serve(closeSession)
  @Allow('signed-in')
  async close(@CurrentAccount() account: SignedIn): Promise<void> {
    await this.sessions.signOut(account);
  }

  @Serve(readAccount)
  @Allow('signed-in')
  async account(@CurrentAccount() account: SignedIn): Promise<OutputOf<typeof readAccount>> {
    const memberships = await this.sessions.memberships(account.accountId);
    return { displayName: account.displayName, email: account.email, associations: memberships };
  }

  @Serve(readAssociation)
  @Allow('member')
  association(@CurrentMember() { associationId }: Member): Promise<OutputOf<typeof readAssociation>> {
    return this.tenancy.read(associationId, async (tx) => {
      const association = await tx.findOneByOrFail(Association, { id: associationId });
      const levels = await tx.find(LevelStep, { where: { associationId }, order: { level: 'ASC' } });
      return { ...association, levels };
    });
  }
}
