import { Column, Entity, PrimaryColumn } from 'typeorm';

/** A message that must leave, written in the same transaction as what it tells. */
@Entity('outbox_message')
export class OutboxMessage {
  @PrimaryColumn('uuid')
  associationId!: string;

  @PrimaryColumn('uuid')
  id!: string;

  @Column('text')
  dedupeKey!: string;

  @Column('text')
  kind!: 'assigned' | 'changed' | 'ended' | 'reminder' | 'sign-in';

  @Column({ type: 'uuid', nullable: true })
  officialId!: string | null;

  @Column({ type: 'uuid', nullable: true })
  assignmentId!: string | null;

  @Column({ type: 'integer', nullable: true })
  sequence!: number | null;

  @Column('jsonb')
  payload!: unknown;

  @Column('timestamptz')
  createdAt!: Date;

  @Column('timestamptz')
  nextTryAt!: Date;

  @Column({ type: 'timestamptz', nullable: true })
  leasedUntil!: Date | null;

  @Column('integer')
  attempts!: number;

  @Column({ type: 'timestamptz', nullable: true })
  sentAt!: Date | null;

  @Column({ type: 'timestamptz', nullable: true })
  supersededAt!: Date | null;

  @Column({ type: 'timestamptz', nullable: true })
  deadAt!: Date | null;

  @Column({ type: 'text', nullable: true })
  lastFault!: string | null;
}
