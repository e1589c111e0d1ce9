import { Column, Entity, PrimaryColumn } from 'typeorm';

/** A building with one or more courts, and what a crew must know about it. */
@Entity('venue')
export class Venue {
  @PrimaryColumn('uuid')
  associationId!: string;

  @PrimaryColumn('uuid')
  id!: string;

  /** The association's own short name, by which files refer to the venue. */
  @Column('text')
  code!: string;

  @Column('text')
  name!: string;

  @Column('text')
  address!: string;

  @Column('text')
  town!: string;

  /** Its position; null while nobody has entered one. */
  @Column({ type: 'uuid', nullable: true })
  placeId!: string | null;

  @Column('text')
  timeZone!: string;

  @Column('text')
  entrance!: string;

  @Column('text')
  changingRoom!: string;

  @Column('text')
  tableSide!: string;

  @Column('text')
  parking!: string;

  @Column('text')
  hazards!: string;

  /** The address to say to an emergency service. */
  @Column('text')
  emergencyAddress!: string;

  @Column('text')
  defibrillator!: string;

  @Column('text')
  firstAid!: string;

  @Column('text')
  nearestHospital!: string;

  @Column('boolean')
  active!: boolean;

  @Column('integer')
  version!: number;
}
