import { Column, Entity, PrimaryColumn } from 'typeorm';
import type { SlateWeights } from '../access/association-policy';
import type { SlateAnswer, SlateProblem } from '../solver';

/** A checked answer of the solver, kept with the problem it answers. */
@Entity('proposal')
export class Proposal {
  @PrimaryColumn('uuid')
  associationId!: string;

  @PrimaryColumn('uuid')
  id!: string;

  @Column('uuid')
  slateId!: string;

  @Column('uuid')
  buildId!: string;

  @Column('text')
  label!: string;

  @Column('jsonb')
  problem!: SlateProblem;

  @Column('jsonb')
  answer!: SlateAnswer;

  @Column('text')
  status!: 'optimal' | 'feasible';

  @Column('double precision')
  totalCost!: number;

  @Column({ type: 'double precision', nullable: true })
  bound!: number | null;

  @Column('integer')
  openSeats!: number;

  @Column('integer')
  seed!: number;

  @Column('double precision')
  seconds!: number;

  @Column('jsonb')
  weights!: SlateWeights;

  /** Version of the slate that the problem was made from. */
  @Column('integer')
  slateVersion!: number;

  @Column('timestamptz')
  createdAt!: Date;
}
