import { Column, Entity, PrimaryColumn } from 'typeorm';

/** One step of an association's ladder of experience; a higher level is more experienced. */
@Entity('level_step')
export class LevelStep {
  @PrimaryColumn('uuid')
  associationId!: string;

  @PrimaryColumn('smallint')
  level!: number;

  @Column('text')
  name!: string;
}
