import { randomUUID } from 'node:crypto';
import { Not, IsNull, type EntityManager } from 'typeorm';
import { Account } from '../access/account.entity';
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

/** The account of an address; made when there is none. Row-level security opens it to who states the address. */
async function accountOf(
  tx: EntityManager,
  person: { readonly email: string; readonly displayName: string; readonly now: Date },
): Promise<string> {
  const { email, displayName, now } = person;
  await tx.query(`select set_config('crewloom.account_email', $1, true)`, [email]);
  const existing = await tx.findOneBy(Account, { email });
  if (existing !== null) return existing.id;
  const id = randomUUID();
  await tx.insert(Account, { id, email, displayName, createdAt: now, disabledAt: null });
  return id;
}
