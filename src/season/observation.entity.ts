import { Column, Entity, PrimaryColumn } from 'typeorm';

/** An observer's notes on one official in one game. */
@Entity('observation')
export class Observation {
  @PrimaryColumn('uuid')
  associationId!: string;

  @PrimaryColumn('uuid')
  id!: string;

  @Column('uuid')
  gameId!: string;

  @Column('uuid')
  officialId!: string;

  @Column('uuid')
  observerAccountId!: string;

  @Column('text')
  strengths!: string;

  @Column('text')
  oneThing!: string;

  @Column({ type: 'smallint', nullable: true })
  suggestedLevel!: number | null;

  @Column('timestamptz')
  observedAt!: Date;
}
