import { Inject, Injectable } from '@nestjs/common';
import { randomUUID } from 'node:crypto';
import { AuditTrail } from '../access/audit-trail';
import { isCalendarDay } from '../platform/calendar-day';
import { clockToken, type Clock } from '../platform/clock';
import { Tenancy } from '../platform/tenancy';
import { lockSlate } from './lock-slate';
import { refreshSlate, type RefreshedGames } from './refresh-slate';
import type { SlateActor } from './slate-actor';
import { Slate } from './slate.entity';

export interface NewSlate {
  readonly name: string;
  /** Local dates, `YYYY-MM-DD`, both inclusive. */
  readonly fromDate: string;
  readonly toDate: string;
}

export type CreateSlateOutcome =
  | { readonly kind: 'created'; readonly slateId: string; readonly games: number }
  | { readonly kind: 'name-taken' }
  | {
      readonly kind: 'refused';
      readonly faults: readonly { readonly field: keyof NewSlate; readonly message: string }[];
    };

export type RefreshSlateOutcome =
  | ({ readonly kind: 'refreshed'; readonly version: number } & RefreshedGames)
  | { readonly kind: 'not-found' };

/** Opens slates and keeps their lists of games up to date. */
@Injectable()
export class CreateSlateService {
  constructor(
    private readonly tenancy: Tenancy,
    private readonly audit: AuditTrail,
    @Inject(clockToken) private readonly clock: Clock,
  ) {}

  /** Opens a slate and takes in every game of its dates that no other slate has. */
  async create(actor: SlateActor, input: NewSlate): Promise<CreateSlateOutcome> {
    const { associationId } = actor;
    const faults = faultsOf(input);
    if (faults.length > 0) return { kind: 'refused', faults };
    const name = input.name.trim();
    return this.tenancy.run(associationId, async (tx): Promise<CreateSlateOutcome> => {
      const id = randomUUID();
      const { fromDate, toDate } = input;
      const rows = await tx.query<unknown[]>(
        `insert into slate (association_id, id, name, from_date, to_date, created_at)
         values ($1, $2, $3, $4, $5, $6) on conflict (association_id, name) do nothing returning id`,
        [associationId, id, name, fromDate, toDate, this.clock.now()],
      );
      if (rows.length === 0) return { kind: 'name-taken' };
      const slate = await tx.findOneByOrFail(Slate, { associationId, id });
      const { added } = await refreshSlate(tx, slate);
      await this.audit.write(tx, {
        ...actor,
        action: 'slate.created',
        objectKind: 'slate',
        objectId: id,
        after: { name, fromDate, toDate, games: added.length },
      });
      return { kind: 'created', slateId: id, games: added.length };
    });
  }

  /** Takes in new games and lets go of those that moved away before anybody was told. */
  async refresh(actor: SlateActor, slateId: string): Promise<RefreshSlateOutcome> {
    const { associationId } = actor;
    return this.tenancy.run(associationId, async (tx): Promise<RefreshSlateOutcome> => {
      const slate = await lockSlate(tx, associationId, slateId);
      if (slate === null) return { kind: 'not-found' };
      const changes = await refreshSlate(tx, slate);
      if (changes.added.length + changes.removed.length > 0) {
        await this.audit.write(tx, {
          ...actor,
          action: 'slate.refreshed',
          objectKind: 'slate',
          objectId: slateId,
          after: { added: changes.added, removed: changes.removed },
        });
      }
      return { kind: 'refreshed', version: slate.version, ...changes };
    });
  }
}

function faultsOf(input: NewSlate): { field: keyof NewSlate; message: string }[] {
  const faults: { field: keyof NewSlate; message: string }[] = [];
  if (input.name.trim() === '') faults.push({ field: 'name', message: 'Give the slate a name.' });
  for (const field of ['fromDate', 'toDate'] as const) {
    if (!isCalendarDay(input[field])) {
      faults.push({ field, message: `"${input[field]}" is not a day such as 2026-03-01.` });
    }
  }
  if (faults.length === 0 && input.toDate < input.fromDate) {
    faults.push({ field: 'toDate', message: 'The last day must not lie before the first.' });
  }
  return faults;
}
