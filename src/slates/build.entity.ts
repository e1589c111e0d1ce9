import { Column, Entity, PrimaryColumn } from 'typeorm';
import type { SlateWeights } from '../access/association-policy';
import type { BuildProgress } from './build-progress';

/** A request to build a slate and how far it has come. */
@Entity('build')
export class Build {
  @PrimaryColumn('uuid')
  associationId!: string;

  @PrimaryColumn('uuid')
  id!: string;

  @Column('uuid')
  slateId!: string;

  @Column('text')
  label!: string;

  @Column('text')
  state!: 'waiting' | 'solving' | 'done' | 'failed';

  @Column('integer')
  seed!: number;

  @Column('double precision')
  secondsLimit!: number;

  @Column('jsonb')
  weights!: SlateWeights;

  @Column('integer')
  slateVersion!: number;

  @Column({ type: 'jsonb', nullable: true })
  progress!: BuildProgress | null;

  @Column({ type: 'timestamptz', nullable: true })
  stopRequestedAt!: Date | null;

  @Column({ type: 'uuid', nullable: true })
  requestedBy!: string | null;

  @Column('timestamptz')
  requestedAt!: Date;

  @Column({ type: 'timestamptz', nullable: true })
  startedAt!: Date | null;

  @Column({ type: 'timestamptz', nullable: true })
  finishedAt!: Date | null;

  @Column({ type: 'text', nullable: true })
  fault!: string | null;
}
