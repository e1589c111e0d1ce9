import { randomUUID } from 'node:crypto';
import { z } from 'zod';
import type { Clock } from '../platform/clock';
import type { Tenancy } from '../platform/tenancy';
import { isKnownZone } from '../platform/time-zones';
import { accountOf } from './account-of';
import { associationPolicySchema, slateWeightsSchema, travelModelSchema } from './association-policy';
import { Association } from './association.entity';
import { AuditTrail } from './audit-trail';
import { Membership } from './membership.entity';
import { roles } from './role';

/** First words of addresses that mean something else. */
const takenSlugs = ['account', 'api', 'assets', 'cal', 'health', 'problems', 'ready', 'sign-in', 'sign-out'];

const emailSchema = z.email({ error: 'must be an e-mail address' }).transform((email) => email.toLowerCase());

/** What must be known of a new association; policy, weights and travel model begin with their defaults. */
export const newAssociationSchema = z.strictObject({
  slug: z
    .string()
    .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, {
      error: 'must be lower-case letters and digits, in words joined by hyphens',
    })
    .refine((slug) => !takenSlugs.includes(slug), { error: 'is taken by the service itself' }),
  name: z.string().trim().min(1).max(120),
  timeZone: z.string().refine(isKnownZone, { error: 'must be a zone such as Europe/Copenhagen' }),
  language: z.string().default('en-GB'),
  dateFormat: z.string().default('yyyy-MM-dd'),
  currency: z.string().regex(/^[A-Z]{3}$/, { error: 'must be an ISO 4217 code such as EUR' }),
  emergencyNumber: z.string().trim().min(1).max(30),
  replyAddress: emailSchema.nullable().default(null),
  administrator: z.strictObject({ email: emailSchema, displayName: z.string().trim().min(1).max(120) }),
});

export type NewAssociation = z.infer<typeof newAssociationSchema>;

/** A member to add or whose roles to set; `official` is a role that only an official's own account has. */
export const newMemberSchema = z.strictObject({
  email: emailSchema,
  displayName: z.string().trim().min(1).max(120),
  roles: z.array(z.enum(roles).exclude(['official'])).min(1),
});

/** The travel model that a new association begins with; see DEVELOPERS.md for where its figures come from. */
const firstTravelModel = travelModelSchema.parse({
  name: '4 min + 1.3 × straight distance at 60 km/h',
  circuity: 1.3,
  speedKmh: 60,
  fixedMinutes: 4,
});

/** Opens an association with one administrator, who is also its first assignor. */
export async function openAssociation(
  { tenancy, clock }: { readonly tenancy: Tenancy; readonly clock: Clock },
  { administrator, ...association }: NewAssociation,
): Promise<{ readonly associationId: string; readonly accountId: string }> {
  const associationId = randomUUID();
  const now = clock.now();
  return tenancy.run(associationId, async (tx) => {
    await tx.insert(Association, {
      ...association,
      id: associationId,
      policy: associationPolicySchema.parse({}),
      weights: slateWeightsSchema.parse({}),
      travelModel: firstTravelModel,
      createdAt: now,
      updatedAt: now,
    });
    const accountId = await accountOf(tx, { ...administrator, now });
    await tx.insert(Membership, {
      associationId,
      accountId,
      roles: ['administrator', 'assignor'],
      officialId: null,
      createdAt: now,
    });
    await new AuditTrail(clock).write(tx, {
      associationId,
      accountId,
      action: 'association.opened',
      objectKind: 'association',
      objectId: associationId,
      after: { slug: association.slug, name: association.name },
    });
    return { associationId, accountId };
  });
}

/** Makes somebody a member with these roles, or sets the roles of a member; an official stays one. */
export async function setMember(
  { tenancy, clock }: { readonly tenancy: Tenancy; readonly clock: Clock },
  associationId: string,
  member: z.infer<typeof newMemberSchema>,
): Promise<{ readonly accountId: string; readonly added: boolean }> {
  const now = clock.now();
  return tenancy.run(associationId, async (tx) => {
    const accountId = await accountOf(tx, { email: member.email, displayName: member.displayName, now });
    const before = await tx.findOneBy(Membership, { associationId, accountId });
    const officialId = before?.officialId ?? null;
    const wanted = officialId === null ? member.roles : [...member.roles, 'official' as const];
    if (before === null)
      await tx.insert(Membership, { associationId, accountId, roles: wanted, officialId, createdAt: now });
    else await tx.update(Membership, { associationId, accountId }, { roles: wanted });
    await new AuditTrail(clock).write(tx, {
      associationId,
      accountId: null,
      action: 'membership.set',
      objectKind: 'membership',
      objectId: accountId,
      ...(before === null ? {} : { before: { roles: before.roles } }),
      after: { roles: wanted },
    });
    return { accountId, added: before === null };
  });
}
