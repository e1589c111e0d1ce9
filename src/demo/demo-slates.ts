import { randomUUID } from 'node:crypto';
import type { EntityManager } from 'typeorm';
import { addDays } from '../platform/calendar-day';
import { Publication } from '../slates/publication.entity';
import { refreshSlate } from '../slates/refresh-slate';
import { Slate } from '../slates/slate.entity';
import { weekendSaturday } from './relative-dates';

export interface DemoSlate {
  readonly id: string;
  readonly name: string;
  readonly games: number;
}

const pastWeeks = [-10, -9, -8, -7, -6, -5, -4, -3, -2, -1];
const comingWeeks = [1, 2];

interface Occasion {
  readonly associationId: string;
  readonly assignorAccountId: string;
  readonly today: string;
  readonly now: Date;
}

/** Opens a slate for every weekend of the demo; those of the past were published on their Thursdays and everybody came. */
export async function addDemoSlates(
  tx: EntityManager,
  occasion: Occasion,
): Promise<{ readonly past: readonly DemoSlate[]; readonly coming: readonly DemoSlate[] }> {
  const past: DemoSlate[] = [];
  for (const week of pastWeeks) {
    const slate = await openSlate(tx, occasion, week);
    await publishAsPlayed(tx, occasion, slate);
    past.push(slate);
  }
  const coming: DemoSlate[] = [];
  for (const week of comingWeeks) coming.push(await openSlate(tx, occasion, week));
  return { past, coming };
}

async function openSlate(
  tx: EntityManager,
  { associationId, today, now }: Occasion,
  week: number,
): Promise<DemoSlate & { readonly fromDate: string }> {
  const fromDate = weekendSaturday(week, today);
  const toDate = addDays(fromDate, 1);
  const slate = tx.create(Slate, {
    associationId,
    id: randomUUID(),
    name: weekendName(fromDate, toDate),
    fromDate,
    toDate,
    weights: null,
    chosenProposalId: null,
    version: 1,
    createdAt: week < 0 ? new Date(`${addDays(fromDate, -5)}T18:00:00Z`) : now,
  });
  await tx.insert(Slate, slate);
  const { added } = await refreshSlate(tx, slate);
  return { id: slate.id, name: slate.name, games: added.length, fromDate };
}

/** Makes the crews that were brought in as history the crews of a slate that was published once. */
async function publishAsPlayed(
  tx: EntityManager,
  { associationId, assignorAccountId }: Occasion,
  slate: DemoSlate & { readonly fromDate: string },
): Promise<void> {
  const publicationId = randomUUID();
  const publishedAt = new Date(`${addDays(slate.fromDate, -2)}T18:30:00Z`);
  await tx.insert(Publication, {
    associationId,
    id: publicationId,
    slateId: slate.id,
    number: 1,
    idempotencyKey: `demo ${slate.id}`,
    proposalId: null,
    changes: { added: slate.games * 2, revised: 0, ended: 0 },
    publishedBy: assignorAccountId,
    publishedAt,
  });
  await tx.query(
    `update seat s set official_id = a.official_id
       from assignment a join slate_game g on g.association_id = a.association_id and g.game_id = a.game_id
      where s.association_id = $1 and a.association_id = $1 and g.slate_id = $2
        and s.game_id = a.game_id and s.seat = a.seat and a.ended_at is null`,
    [associationId, slate.id],
  );
  await tx.query(
    `update assignment a
        set publication_id = $3, created_at = $4, revised_at = $4,
            replied_at = $4::timestamptz + make_interval(mins => 20 + abs(hashtext(a.official_id::text)) % 1200)
       from slate_game g
      where g.association_id = a.association_id and g.game_id = a.game_id
        and a.association_id = $1 and g.slate_id = $2 and a.ended_at is null`,
    [associationId, slate.id, publicationId, publishedAt],
  );
}

/** Such as `Weekend of 28–29 November 2026`. */
function weekendName(fromDate: string, toDate: string): string {
  const format = new Intl.DateTimeFormat('en-GB', { dateStyle: 'long', timeZone: 'UTC' });
  const range = format.formatRange(new Date(`${fromDate}T00:00:00Z`), new Date(`${toDate}T00:00:00Z`));
  // Releases of the locale data differ in the blanks that they put around the dash.
  return `Weekend of ${range.replace(/\s/gu, ' ').replace(/^(\d+) – (\d+)/, '$1–$2')}`;
}
