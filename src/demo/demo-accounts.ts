import { Not, IsNull, type EntityManager } from 'typeorm';
import { accountOf } from '../access/account-of';
import { Membership } from '../access/membership.entity';
import type { Role } from '../access/role';
import { Official } from '../roster/official.entity';
import { demoStaff } from './demo-association';

/** Officials by number who also watch others at work. */
const mentors = ['1001', '1006'];

/** Gives everybody of the demo an account; returns the assignor's. */
export async function addDemoAccounts(
  tx: EntityManager,
  associationId: string,
  now: Date,
): Promise<{ readonly assignorAccountId: string; readonly accounts: number }> {
  const officials = await tx.findBy(Official, { associationId, email: Not(IsNull()) });
  const members: { email: string; displayName: string; roles: Role[]; officialId: string | null }[] = [
    ...demoStaff.map((person) => ({ ...person, officialId: null })),
    ...officials.map(({ id, number, email, givenName, familyName }) => ({
      email: email ?? '',
      displayName: `${givenName} ${familyName}`,
      roles: mentors.includes(number)
        ? (['official', 'observer'] satisfies Role[])
        : (['official'] satisfies Role[]),
      officialId: id,
    })),
  ];
  let assignorAccountId: string | null = null;
  for (const { email, displayName, roles, officialId } of members) {
    const accountId = await accountOf(tx, { email, displayName, now });
    await tx.insert(Membership, { associationId, accountId, roles, officialId, createdAt: now });
    if (roles.includes('assignor')) assignorAccountId = accountId;
  }
  if (assignorAccountId === null) throw new Error('Nobody among the demo staff is an assignor.');
  return { assignorAccountId, accounts: members.length };
}
