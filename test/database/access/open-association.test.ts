import { newAssociationSchema, openAssociation, setMember } from '../../../src/access/open-association';
import { Membership } from '../../../src/access/membership.entity';
import { FixedClock } from '../../../src/platform/clock';
import { testDatabase, type TestDatabase } from '../../support/database/test-database';

// Goal: an association can be opened without the demo, and its office staffed. Method: open two through the
// same function as the command and read them back as the application role.
describe('opening an association', () => {
  let database: TestDatabase;
  const clock = new FixedClock('2026-09-01T08:00:00Z');
  const wanted = (slug: string) =>
    newAssociationSchema.parse({
      slug,
      name: 'Dune Belt Officials',
      timeZone: 'Europe/Lisbon',
      currency: 'EUR',
      emergencyNumber: '112',
      administrator: { email: 'Runa@Dune.example', displayName: 'Runa Dahl' },
    });

  beforeAll(async () => {
    database = await testDatabase();
  });
  afterAll(() => database.close());

  it('makes its administrator the first assignor, and one account serves two associations', async () => {
    const { tenancy } = database;
    const first = await openAssociation({ tenancy, clock }, wanted('dune-belt'));
    const second = await openAssociation({ tenancy, clock }, wanted('dune-belt-youth'));
    expect(second.accountId).toBe(first.accountId);
    const members = await tenancy.read(first.associationId, (tx) => tx.find(Membership));
    expect(members.map(({ accountId, roles }) => ({ accountId, roles }))).toEqual([
      { accountId: first.accountId, roles: ['administrator', 'assignor'] },
    ]);
  });

  it('refuses a short name twice, and one that the service uses itself', async () => {
    const { tenancy } = database;
    await openAssociation({ tenancy, clock }, wanted('salt-flats'));
    await expect(openAssociation({ tenancy, clock }, wanted('salt-flats'))).rejects.toThrow();
    expect(newAssociationSchema.safeParse({ ...wanted('x'), slug: 'api' }).success).toBe(false);
    expect(newAssociationSchema.safeParse({ ...wanted('x'), timeZone: 'Europe/Nowhere' }).success).toBe(
      false,
    );
  });

  it('adds a member once and sets their roles afterwards', async () => {
    const { tenancy } = database;
    const { associationId } = await openAssociation({ tenancy, clock }, wanted('heath'));
    const member = { email: 'tor@heath.example', displayName: 'Tor Lind' };
    const added = await setMember({ tenancy, clock }, associationId, { ...member, roles: ['treasurer'] });
    const changed = await setMember({ tenancy, clock }, associationId, { ...member, roles: ['observer'] });
    expect([added.added, changed.added, changed.accountId]).toEqual([true, false, added.accountId]);
    const stored = await tenancy.read(associationId, (tx) =>
      tx.findOneByOrFail(Membership, { associationId, accountId: added.accountId }),
    );
    expect(stored.roles).toEqual(['observer']);
  });
});
