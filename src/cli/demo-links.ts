import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { IsNull, MoreThan } from 'typeorm';
import { z } from 'zod';
import { AuditTrail } from '../access/audit-trail';
import type { SignIn } from '../access/sign-in';
import { FeedTokensService } from '../calendar/feed-tokens.service';
import { demoAssociation, demoStaff } from '../demo/demo-association';
import { newToken } from '../platform/random';
import { Official } from '../roster/official.entity';
import { Assignment } from '../slates/assignment.entity';
import type { OpenService } from './open-service';

/** Addresses to look at the demo by. */
export interface DemoLinks {
  /** One-time link for the assignor; `null` while five of them are still good. */
  readonly desk: string | null;
  /** The crew chief of the next game; `null` when nobody has one. */
  readonly official: { readonly name: string; readonly feed: string; readonly briefing: string } | null;
  readonly api: string;
}

const keptSchema = z.object({ officialId: z.uuid(), feedId: z.uuid(), feedSecret: z.string() });
type Kept = z.infer<typeof keptSchema>;

/**
 * Makes the links. The secret of the demo's feed address is kept in the data folder, readable by its owner only, so that the
 * next start shows the same one; nowhere else is such a secret ever kept.
 */
export async function demoLinks(
  service: OpenService,
  { associationId, url, signIn }: { associationId: string; url: string; signIn: SignIn },
): Promise<DemoLinks> {
  const home = `/${demoAssociation.slug}`;
  const assignor = demoStaff.find(({ roles }) => roles.includes('assignor'));
  const next = await nextChief(service, associationId);
  return {
    desk: assignor === undefined ? null : await signIn.linkFor(assignor.email, home),
    official:
      next === null
        ? null
        : {
            name: `${next.official.givenName} ${next.official.familyName}`,
            feed: `${url}/cal/${await feedSecret(service, associationId, next.official.id)}.ics`,
            briefing: await briefingLink(
              signIn,
              next.official.email,
              `${home}/games/${next.gameId}/briefing`,
              url,
            ),
          },
    api: `${url}/api`,
  };
}

/** The first crew chief to be on court from now on who can sign in. */
async function nextChief(
  { tenancy, clock }: OpenService,
  associationId: string,
): Promise<{ official: Official; gameId: string } | null> {
  return tenancy.read(associationId, async (tx) => {
    const assignments = await tx.find(Assignment, {
      where: { associationId, seat: 'chief', endedAt: IsNull(), startsAt: MoreThan(clock.now()) },
      order: { startsAt: 'ASC', id: 'ASC' },
      take: 20,
    });
    for (const { officialId, gameId } of assignments) {
      const official = await tx.findOneBy(Official, { associationId, id: officialId });
      if (official !== null && official.email !== null) return { official, gameId };
    }
    return null;
  });
}

async function briefingLink(
  signIn: SignIn,
  email: string | null,
  path: string,
  url: string,
): Promise<string> {
  const link = email === null ? null : await signIn.linkFor(email.toLowerCase(), path);
  // With five links still good the page itself asks to sign in.
  return link ?? `${url}${path}`;
}

async function feedSecret(service: OpenService, associationId: string, officialId: string): Promise<string> {
  const { tenancy, clock, configuration } = service;
  const path = join(configuration.dataDirectory, 'demo-links.json');
  const tokens = new FeedTokensService(tenancy, new AuditTrail(clock), clock, newToken);
  const owner = { associationId, officialId, accountId: null };
  const kept = await readKept(path);
  if (kept?.officialId === officialId) {
    const addresses = await tokens.list(owner);
    if (addresses.some(({ id }) => id === kept.feedId)) return kept.feedSecret;
  }
  const made = await tokens.make(owner, 'demo');
  if (made.kind !== 'made') throw new Error(`The demo's official has ${made.max} feed addresses already.`);
  const keep: Kept = { officialId, feedId: made.id, feedSecret: made.secret };
  await writeFile(path, `${JSON.stringify(keep)}\n`, { mode: 0o600 });
  return made.secret;
}

async function readKept(path: string): Promise<Kept | null> {
  try {
    const parsed = keptSchema.safeParse(JSON.parse(await readFile(path, 'utf8')));
    return parsed.success ? parsed.data : null;
  } catch (error) {
    const isMissing = (error as NodeJS.ErrnoException).code === 'ENOENT';
    if (isMissing || error instanceof SyntaxError) return null;
    throw error;
  }
}
