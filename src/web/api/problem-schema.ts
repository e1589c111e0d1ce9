import { z } from 'zod';

/** Problem details as the service answers them (RFC 9457, with members of our own). */
export const problemSchema = z.object({
  type: z.string().describe('Address that names the kind of problem.'),
  title: z.string(),
  status: z.number().int(),
  detail: z.string().optional(),
  code: z.string().describe('Permanent code, such as REQUEST.NOT_FOUND.'),
  errors: z.array(z.object({ path: z.string(), message: z.string() })).optional(),
  requestId: z.string().optional(),
});
