import { Column, Entity, PrimaryColumn } from 'typeorm';

/** Why an official may not be sent to a team, to a venue or beside another official; exactly one of the three is set. */
@Entity('conflict')
export class Conflict {
  @PrimaryColumn('uuid')
  associationId!: string;

  @PrimaryColumn('uuid')
  id!: string;

  @Column('uuid')
  officialId!: string;

  @Column({ type: 'uuid', nullable: true })
  teamId!: string | null;

  @Column({ type: 'uuid', nullable: true })
  venueId!: string | null;

  @Column({ type: 'uuid', nullable: true })
  otherOfficialId!: string | null;

  @Column('text')
  reason!: string;

  /** First local date on which it holds; null holds from ever. */
  @Column({ type: 'date', nullable: true })
  since!: string | null;

  /** Last local date on which it holds; null holds for good. */
  @Column({ type: 'date', nullable: true })
  until!: string | null;
}
