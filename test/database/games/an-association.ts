import { randomUUID } from 'node:crypto';
import {
  associationPolicySchema,
  slateWeightsSchema,
  type TravelModel,
} from '../../../src/access/association-policy';
import { Association } from '../../../src/access/association.entity';
import type { TestDatabase } from '../../support/database/test-database';

const travelModel: TravelModel = { name: 'test', circuity: 1.3, speedKmh: 60, fixedMinutes: 4 };

/** An association in Copenhagen without anybody in it; returns its id. */
export async function anAssociation({ tenancy }: Pick<TestDatabase, 'tenancy'>): Promise<string> {
  const id = randomUUID();
  await tenancy.run(id, (tx) =>
    tx.insert(Association, {
      id,
      slug: `test-${id}`,
      name: 'Test',
      timeZone: 'Europe/Copenhagen',
      language: 'en-GB',
      dateFormat: 'dd.MM.yyyy',
      currency: 'EUR',
      emergencyNumber: '112',
      replyAddress: null,
      policy: associationPolicySchema.parse({}),
      weights: slateWeightsSchema.parse({}),
      travelModel,
      version: 1,
      createdAt: new Date(0),
      updatedAt: new Date(0),
    }),
  );
  return id;
}
