import { associationPolicySchema, slateWeightsSchema, travelModelSchema } from '../access/association-policy';
import type { Association } from '../access/association.entity';
import type { Role } from '../access/role';

/** The fictional Marram Coast association: invented people, teams and streets in a real time zone. */
export const demoAssociation: Omit<Association, 'id' | 'version' | 'createdAt' | 'updatedAt'> = {
  slug: 'marram-coast',
  name: 'Marram Coast Basketball Officials',
  timeZone: 'Europe/Copenhagen',
  language: 'en-GB',
  dateFormat: 'dd.MM.yyyy',
  currency: 'EUR',
  emergencyNumber: '112',
  replyAddress: 'crews@marram-coast.example',
  policy: associationPolicySchema.parse({}),
  // The defaults: an open seat costs more than anything that leaving it open could save on the other terms.
  weights: slateWeightsSchema.parse({}),
  // On 562 routed pairs the best affine fit was 3.2 min + 1.26 min for each straight kilometre: with 1.3 road over straight
  // kilometres that is about 60 km/h.
  travelModel: travelModelSchema.parse({
    name: '4 min + 1.3 × straight distance at 60 km/h',
    circuity: 1.3,
    speedKmh: 60,
    fixedMinutes: 4,
  }),
};

/** Accounts beside those of the officials. */
export const demoStaff: readonly {
  readonly email: string;
  readonly displayName: string;
  readonly roles: Role[];
}[] = [
  {
    email: 'assignor@marram-coast.example',
    displayName: 'Solveig Strand',
    roles: ['administrator', 'assignor'],
  },
  { email: 'observer@marram-coast.example', displayName: 'Otto Ness', roles: ['observer'] },
  { email: 'treasurer@marram-coast.example', displayName: 'Thea Bank', roles: ['treasurer'] },
];
