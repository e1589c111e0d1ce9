import { Inject, Injectable } from '@nestjs/common';
import { z } from 'zod';
import { hasRole, type Member } from '../access/member';
import { clockToken, type Clock } from '../platform/clock';
import { Tenancy } from '../platform/tenancy';
import { readCrewSeat } from './crew-seat.query';
import { Reflection } from './reflection.entity';

const thought = z.string().trim().max(2000).default('');

/** An official's own notes after a game: two things to keep, one to change, one question about the rules. */
export const reflectionForm = z.strictObject({
  keptFirst: thought,
  keptSecond: thought,
  toChange: thought,
  question: thought,
  /** Lets mentors (observers of the association) read it; false keeps it to its owner alone. */
  sharedWithMentor: z.boolean().default(false),
});

export type ReflectionForm = z.infer<typeof reflectionForm>;

export type WriteReflectionOutcome =
  | { readonly kind: 'written'; readonly reflection: Reflection }
  | { readonly kind: 'too-early'; readonly from: Date }
  | { readonly kind: 'not-crew' };

/** Reflections are private: nobody but their owner reads one, unless the owner shares it with mentors. */
@Injectable()
export class ReflectionsService {
  constructor(
    private readonly tenancy: Tenancy,
    @Inject(clockToken) private readonly clock: Clock,
  ) {}

  async write(
    member: Pick<Member, 'associationId' | 'officialId'>,
    gameId: string,
    form: ReflectionForm,
  ): Promise<WriteReflectionOutcome> {
    const { associationId, officialId } = member;
    if (officialId === null) return { kind: 'not-crew' };
    return this.tenancy.run(associationId, async (tx) => {
      const seat = await readCrewSeat(tx, { associationId, gameId, officialId });
      if (seat === null) return { kind: 'not-crew' };
      const now = this.clock.now();
      if (now.getTime() < seat.startsAt.getTime()) return { kind: 'too-early', from: seat.startsAt };
      const own = { associationId, gameId, officialId };
      await tx.upsert(Reflection, { ...own, ...form, writtenAt: now }, [
        'associationId',
        'gameId',
        'officialId',
      ]);
      return { kind: 'written', reflection: await tx.findOneByOrFail(Reflection, own) };
    });
  }

  /** The member's own notes on a game; null when there are none. */
  async readOwn(
    member: Pick<Member, 'associationId' | 'officialId'>,
    gameId: string,
  ): Promise<Reflection | null> {
    const { associationId, officialId } = member;
    if (officialId === null) return null;
    return this.tenancy.read(associationId, (tx) =>
      tx.findOneBy(Reflection, { associationId, gameId, officialId }),
    );
  }

  /** What an official has shared, newest first; nothing for who is no observer. */
  async readShared(
    member: Pick<Member, 'associationId' | 'roles'>,
    officialId: string,
  ): Promise<Reflection[]> {
    if (!hasRole(member, 'observer')) return [];
    const { associationId } = member;
    return this.tenancy.read(associationId, (tx) =>
      tx.find(Reflection, {
        where: { associationId, officialId, sharedWithMentor: true },
        order: { writtenAt: 'DESC', gameId: 'ASC' },
      }),
    );
  }

  /** @returns false when there was nothing to take away */
  async takeAway(member: Pick<Member, 'associationId' | 'officialId'>, gameId: string): Promise<boolean> {
    const { associationId, officialId } = member;
    if (officialId === null) return false;
    const gone = await this.tenancy.run(associationId, (tx) =>
      tx.delete(Reflection, { associationId, gameId, officialId }),
    );
    return (gone.affected ?? 0) > 0;
  }
}
