import { randomUUID } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import { Account } from './account.entity';

/**
 * The account of an e-mail address, in lower case; made when there is none. Row-level security opens it to
 * who states the address, which this transaction does from here on.
 */
export async function accountOf(
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
