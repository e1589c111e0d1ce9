import { Column, Entity, PrimaryColumn } from 'typeorm';
import type { SeatName } from './seat-name';

/** What an official has been told about one seat of one game, from publication until it ends. */
@Entity('assignment')
export class Assignment {
  @PrimaryColumn('uuid')
  associationId!: string;

  @PrimaryColumn('uuid')
  id!: string;

  /** RFC 5545 UID of its event; made once and never changed. */
  @Column('uuid')
  uid!: string;

  /** RFC 5545 SEQUENCE; never falls. */
  @Column('integer')
  sequence!: number;

  /** The publication that made it; null for games of past seasons brought in as history. */
  @Column({ type: 'uuid', nullable: true })
  publicationId!: string | null;

  @Column('uuid')
  gameId!: string;

  @Column('text')
  seat!: SeatName;

  @Column('uuid')
  officialId!: string;

  @Column('uuid')
  venueId!: string;

  /** Tip-off as the official was told. */
  @Column('timestamptz')
  startsAt!: Date;

  @Column('timestamptz')
  endsAt!: Date;

  /** When both officials must be on court. */
  @Column('timestamptz')
  dutyStartsAt!: Date;

  @Column('timestamptz')
  dutyEndsAt!: Date;

  /** RFC 5545 participation status. */
  @Column('text')
  reply!: 'NEEDS-ACTION' | 'ACCEPTED' | 'DECLINED';

  @Column({ type: 'timestamptz', nullable: true })
  repliedAt!: Date | null;

  @Column('text')
  replyReason!: string;

  @Column({ type: 'text', nullable: true })
  endReason!: 'replaced' | 'declined' | 'withdrawn' | 'game-cancelled' | null;

  /** When the official stopped being assigned; null while they are. */
  @Column({ type: 'timestamptz', nullable: true })
  endedAt!: Date | null;

  @Column('timestamptz')
  createdAt!: Date;

  @Column('timestamptz')
  revisedAt!: Date;
}
