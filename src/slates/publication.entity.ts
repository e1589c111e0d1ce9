import { Column, Entity, PrimaryColumn } from 'typeorm';
import type { PublicationChanges } from './publication-changes';

/** One publishing of a slate: what changed for whom, all or nothing. */
@Entity('publication')
export class Publication {
  @PrimaryColumn('uuid')
  associationId!: string;

  @PrimaryColumn('uuid')
  id!: string;

  @Column('uuid')
  slateId!: string;

  /** Counts from 1 within the slate. */
  @Column('integer')
  number!: number;

  @Column('text')
  idempotencyKey!: string;

  @Column({ type: 'uuid', nullable: true })
  proposalId!: string | null;

  @Column('jsonb')
  changes!: PublicationChanges;

  @Column({ type: 'uuid', nullable: true })
  publishedBy!: string | null;

  @Column('timestamptz')
  publishedAt!: Date;
}
