import { Inject, Injectable } from '@nestjs/common';
import { AuditTrail } from '../access/audit-trail';
import { hasRole, type Member } from '../access/member';
import { clockToken, type Clock } from '../platform/clock';
import { Tenancy } from '../platform/tenancy';
import { readCrewSeat } from './crew-seat.query';
import { GameReport } from './game-report.entity';
import type { GameReportForm } from './game-report-form';

export type FileReportOutcome =
  | { readonly kind: 'filed'; readonly report: GameReport }
  /** Tip-off is still to come. */
  | { readonly kind: 'too-early'; readonly from: Date }
  /** The member is not of the crew. */
  | { readonly kind: 'not-crew' };

type Reader = Pick<Member, 'associationId' | 'accountId' | 'officialId' | 'roles'>;

/** One report a game, filed and corrected by its crew, read by the crew, assignors and administrators. */
@Injectable()
export class GameReportsService {
  constructor(
    private readonly tenancy: Tenancy,
    private readonly audit: AuditTrail,
    @Inject(clockToken) private readonly clock: Clock,
  ) {}

  /** Files the report, or replaces the one that stands; the trail keeps who did so. */
  async file(member: Reader, gameId: string, form: GameReportForm): Promise<FileReportOutcome> {
    const { associationId, officialId } = member;
    if (officialId === null) return { kind: 'not-crew' };
    return this.tenancy.run(associationId, async (tx) => {
      const seat = await readCrewSeat(tx, { associationId, gameId, officialId });
      if (seat === null) return { kind: 'not-crew' };
      const now = this.clock.now();
      if (now.getTime() < seat.startsAt.getTime()) return { kind: 'too-early', from: seat.startsAt };
      const before = await tx.findOneBy(GameReport, { associationId, gameId });
      const report = { associationId, gameId, ...form, filedByOfficialId: officialId, filedAt: now };
      await tx.upsert(GameReport, report, ['associationId', 'gameId']);
      await this.audit.write(tx, {
        associationId,
        accountId: member.accountId,
        action: before === null ? 'game-report.filed' : 'game-report.corrected',
        objectKind: 'game',
        objectId: gameId,
        after: { played: form.played },
      });
      return { kind: 'filed', report: await tx.findOneByOrFail(GameReport, { associationId, gameId }) };
    });
  }

  /** The report, or null when there is none that the member may read. */
  async read(member: Reader, gameId: string): Promise<GameReport | null> {
    const { associationId, officialId } = member;
    return this.tenancy.read(associationId, async (tx) => {
      const mayRead =
        hasRole(member, 'assignor', 'administrator') ||
        (officialId !== null && (await readCrewSeat(tx, { associationId, gameId, officialId })) !== null);
      return mayRead ? tx.findOneBy(GameReport, { associationId, gameId }) : null;
    });
  }
}
