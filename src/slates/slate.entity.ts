import { Column, Entity, PrimaryColumn } from 'typeorm';
import type { SlateWeights } from '../access/association-policy';

/** The set of games built and published together, usually a weekend. */
@Entity('slate')
export class Slate {
  @PrimaryColumn('uuid')
  associationId!: string;

  @PrimaryColumn('uuid')
  id!: string;

  @Column('text')
  name!: string;

  @Column('date')
  fromDate!: string;

  @Column('date')
  toDate!: string;

  /** Weights for this slate only; null uses the association's. */
  @Column({ type: 'jsonb', nullable: true })
  weights!: SlateWeights | null;

  @Column({ type: 'uuid', nullable: true })
  chosenProposalId!: string | null;

  @Column('integer')
  version!: number;

  @Column('timestamptz')
  createdAt!: Date;
}
