import { Inject, Injectable } from '@nestjs/common';
import { randomUUID } from 'node:crypto';
import { z } from 'zod';
import { LevelStep } from '../access/level-step.entity';
import { hasRole, type Member } from '../access/member';
import { clockToken, type Clock } from '../platform/clock';
import { Tenancy } from '../platform/tenancy';
import { readCrewSeat } from './crew-seat.query';
import { Observation } from './observation.entity';

/** What an observer writes about one official in one game. */
export const observationForm = z.strictObject({
  strengths: z.string().trim().max(4000).default(''),
  /** The one thing to work on next. */
  oneThing: z.string().trim().max(1000).default(''),
  /** A level to review the official for, or null. */
  suggestedLevel: z.number().int().nullable().default(null),
});

export type ObservationForm = z.infer<typeof observationForm>;

export type ObserveOutcome =
  | { readonly kind: 'noted'; readonly observation: Observation }
  | { readonly kind: 'too-early'; readonly from: Date }
  /** The official did not hold a seat of this game. */
  | { readonly kind: 'not-in-game' }
  /** The association's ladder has no such level. */
  | { readonly kind: 'unknown-level'; readonly level: number }
  /** Nobody observes themselves, and only observers observe. */
  | { readonly kind: 'not-observer' };

/** Observations: written by observers, read by the observed official and by observers, never set side by side. */
@Injectable()
export class ObservationsService {
  constructor(
    private readonly tenancy: Tenancy,
    @Inject(clockToken) private readonly clock: Clock,
  ) {}

  /** Notes an observation, or replaces the observer's own one on the same official and game. */
  async note(
    member: Pick<Member, 'associationId' | 'accountId' | 'officialId' | 'roles'>,
    about: { readonly gameId: string; readonly officialId: string },
    form: ObservationForm,
  ): Promise<ObserveOutcome> {
    const { associationId, accountId } = member;
    if (!hasRole(member, 'observer') || member.officialId === about.officialId)
      return { kind: 'not-observer' };
    return this.tenancy.run(associationId, async (tx) => {
      const seat = await readCrewSeat(tx, { associationId, ...about });
      if (seat === null) return { kind: 'not-in-game' };
      const now = this.clock.now();
      if (now.getTime() < seat.startsAt.getTime()) return { kind: 'too-early', from: seat.startsAt };
      const level = form.suggestedLevel;
      if (level !== null && !(await tx.existsBy(LevelStep, { associationId, level }))) {
        return { kind: 'unknown-level', level };
      }
      const key = { associationId, ...about, observerAccountId: accountId };
      const before = await tx.findOneBy(Observation, key);
      const id = before?.id ?? randomUUID();
      await tx.save(Observation, { ...key, id, ...form, observedAt: now });
      return { kind: 'noted', observation: await tx.findOneByOrFail(Observation, { associationId, id }) };
    });
  }

  /** Observations of an official, newest first; nothing for who is neither that official nor an observer. */
  async ofOfficial(
    member: Pick<Member, 'associationId' | 'officialId' | 'roles'>,
    officialId: string,
  ): Promise<Observation[]> {
    if (member.officialId !== officialId && !hasRole(member, 'observer')) return [];
    const { associationId } = member;
    return this.tenancy.read(associationId, (tx) =>
      tx.find(Observation, {
        where: { associationId, officialId },
        order: { observedAt: 'DESC', id: 'ASC' },
      }),
    );
  }
}
