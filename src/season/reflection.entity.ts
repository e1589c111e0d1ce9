import { Column, Entity, PrimaryColumn } from 'typeorm';

/** An official's own notes after a game; private unless shared. */
@Entity('reflection')
export class Reflection {
  @PrimaryColumn('uuid')
  associationId!: string;

  @PrimaryColumn('uuid')
  gameId!: string;

  @PrimaryColumn('uuid')
  officialId!: string;

  @Column('text')
  keptFirst!: string;

  @Column('text')
  keptSecond!: string;

  @Column('text')
  toChange!: string;

  @Column('text')
  question!: string;

  @Column('boolean')
  sharedWithMentor!: boolean;

  @Column('timestamptz')
  writtenAt!: Date;
}
