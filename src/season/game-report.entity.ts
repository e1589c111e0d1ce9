import { Column, Entity, PrimaryColumn } from 'typeorm';

/** What a crew reports after a game. */
@Entity('game_report')
export class GameReport {
  @PrimaryColumn('uuid')
  associationId!: string;

  @PrimaryColumn('uuid')
  gameId!: string;

  @Column('text')
  played!: 'as-planned' | 'changed' | 'not-played';

  @Column({ type: 'integer', nullable: true })
  homeScore!: number | null;

  @Column({ type: 'integer', nullable: true })
  awayScore!: number | null;

  @Column('integer')
  lateStartMinutes!: number;

  @Column('text')
  incidents!: string;

  @Column('text')
  absent!: string;

  @Column('uuid')
  filedByOfficialId!: string;

  @Column('timestamptz')
  filedAt!: Date;
}
