import { z } from 'zod';
import { idField, listOf } from '../web/api/fields';
import { defineOperation } from '../web/api/operation';

/** What the API says of venues, and what can be asked about them. */

export const venueSchema = z.object({
  id: idField,
  code: z.string(),
  name: z.string(),
  address: z.string(),
  town: z.string(),
  timeZone: z.string(),
  position: z.object({ latitude: z.number(), longitude: z.number() }).nullable(),
  courts: z.array(z.object({ id: idField, name: z.string() })),
  entrance: z.string(),
  changingRoom: z.string(),
  tableSide: z.string(),
  parking: z.string(),
  hazards: z.string(),
  emergencyAddress: z.string(),
  defibrillator: z.string(),
  firstAid: z.string(),
  nearestHospital: z.string(),
  active: z.boolean(),
});

const venues = '/api/v1/associations/:slug/venues';

export const listVenues = defineOperation({
  id: 'listVenues',
  method: 'GET',
  path: venues,
  tag: 'Venues',
  summary: 'Venues in use, by name',
  response: listOf(venueSchema),
});

export const readVenue = defineOperation({
  id: 'readVenue',
  method: 'GET',
  path: `${venues}/:venueId`,
  tag: 'Venues',
  summary: 'One venue with its courts, access and safety notes',
  params: z.object({ slug: z.string(), venueId: idField }),
  response: venueSchema,
});
