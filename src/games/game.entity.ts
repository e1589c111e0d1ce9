import { Column, Entity, PrimaryColumn } from 'typeorm';

/** One game. Its local date and time in the venue's zone are the truth; `startsAt` is derived from them. */
@Entity('game')
export class Game {
  @PrimaryColumn('uuid')
  associationId!: string;

  @PrimaryColumn('uuid')
  id!: string;

  /** The competition's game number, by which a moved or cancelled game is recognised. */
  @Column('text')
  number!: string;

  @Column('uuid')
  divisionId!: string;

  @Column('uuid')
  venueId!: string;

  @Column({ type: 'uuid', nullable: true })
  courtId!: string | null;

  @Column('date')
  localDate!: string;

  /** HH:MM:SS of tip-off. */
  @Column('time')
  localTime!: string;

  @Column('text')
  timeZone!: string;

  /** Version of the zone data by which `startsAt` was derived. */
  @Column('text')
  zoneDataVersion!: string;

  @Column('timestamptz')
  startsAt!: Date;

  @Column('integer')
  durationMinutes!: number;

  @Column('uuid')
  homeTeamId!: string;

  @Column('uuid')
  awayTeamId!: string;

  @Column('double precision')
  priority!: number;

  /** RFC 5545 event status. */
  @Column('text')
  status!: 'TENTATIVE' | 'CONFIRMED' | 'CANCELLED';

  @Column('text')
  note!: string;

  @Column('integer')
  version!: number;

  @Column('timestamptz')
  updatedAt!: Date;
}
